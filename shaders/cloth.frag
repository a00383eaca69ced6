in vec3 worldPlace;
in vec3 rightNormal;
in vec2 cutPlace;
in vec2 open;
in float mapValue;

uniform vec3 rightColour; // linear
uniform vec3 wrongColour; // linear
uniform vec2 warp;        // unit, warp direction in the flat piece
uniform float grainStep;  // m between grain lines
uniform float opacity;    // 0 to 1
uniform int show;         // 0: as on paper, 1: both yarns in two tones, 2: a map
uniform vec3 warpColour;  // linear, for two tones
uniform vec3 weftColour;  // linear
uniform vec2 mapRange;    // values at the ends of the ramp

const int rampSteps = 9;
uniform vec3 ramp[rampSteps]; // sRGB, evenly spread over mapRange

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

// rampColour mixes neighbours of the ramp as they are on the legend, in sRGB,
// and returns linear light.
vec3 rampColour(float x) {
    float at = clamp((x - mapRange.x) / (mapRange.y - mapRange.x), 0.0, 1.0) * float(rampSteps - 1);
    int low = min(int(at), rampSteps - 2);
    vec3 c = mix(ramp[low], ramp[low + 1], at - float(low));
    return mix(c / 12.92, pow((c + 0.055) / 1.055, vec3(2.4)), step(0.04045, c));
}

// grained marks both yarns. On paper the warp is the darker, so the grain has
// a direction.
vec3 grained(vec3 base) {
    if (grainStep > 1e5) {
        return base; // no grain lines
    }
    float warpLine = line(dot(cutPlace, vec2(warp.y, -warp.x)), grainStep, 0.0009 * float(1 + show));
    float weftLine = line(dot(cutPlace, warp), grainStep, 0.0009 * float(1 + show));
    if (show == 1) {
        return mix(mix(base, weftColour, weftLine), warpColour, warpLine);
    }
    float strength = gl_FrontFacing ? 1.0 : 0.6;
    base *= 1.0 - 0.42 * strength * warpLine;
    return base * (1.0 - 0.17 * strength * weftLine);
}

void main() {
    vec3 v = normalize(eye - worldPlace);
    vec3 n = towardsEye(normalize(gl_FrontFacing ? rightNormal : -rightNormal), v);
    float sky = gl_FrontFacing ? open.x : open.y;
    vec3 lit;
    if (show == 2) {
        // A map is to be read off a legend: its colour counts more than the light.
        vec3 c = rampColour(mapValue);
        lit = 0.55 * c + 0.50 * shade(c, worldPlace, n, sky);
    } else {
        lit = shade(grained(gl_FrontFacing ? rightColour : wrongColour), worldPlace, n, sky);
    }
    colour = vec4(encode(lit), opacity);
}
