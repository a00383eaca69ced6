in vec3 worldPlace;
in vec3 rightNormal;
in vec2 cutPlace;
in vec2 open;

uniform vec3 rightColour; // linear
uniform vec3 wrongColour; // linear
uniform vec2 warp;        // unit, warp direction in the flat piece
uniform float grainStep;  // m between grain lines

out vec4 colour;

// line returns how much of a pixel lies on one of the lines that stand every
// step along x, each wide. It is the exact box filter of that comb over the
// pixel, so lines neither flicker nor step, and far away become a plain tint.
float line(float x, float step, float wide) {
    float pixel = max(fwidth(x), 1e-6) / step;
    float duty = wide / step;
    float a = x / step + 0.5 * duty - 0.5 * pixel;
    float b = a + pixel;
    float sum = (floor(b) - floor(a)) * duty + min(fract(b), duty) - min(fract(a), duty);
    return clamp(sum / pixel, 0.0, 1.0);
}

void main() {
    vec3 v = normalize(eye - worldPlace);
    vec3 n = normalize(gl_FrontFacing ? rightNormal : -rightNormal);
    vec3 base = gl_FrontFacing ? rightColour : wrongColour;
    float acrossWarp = dot(cutPlace, vec2(warp.y, -warp.x));
    float acrossWeft = dot(cutPlace, warp);
    // Both yarns are marked; the warp is the darker, so the grain has a direction.
    float strength = gl_FrontFacing ? 1.0 : 0.6;
    base *= 1.0 - 0.42 * strength * line(acrossWarp, grainStep, 0.0009);
    base *= 1.0 - 0.17 * strength * line(acrossWeft, grainStep, 0.0009);
    colour = vec4(encode(shade(base, worldPlace, towardsEye(n, v), gl_FrontFacing ? open.x : open.y)), 1.0);
}
