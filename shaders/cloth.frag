in vec3 worldPlace;
in vec3 rightNormal;
in vec3 warpAlong;
in vec2 cutPlace;
in vec2 open;
in float mapValue;

uniform vec3 rightColour; // linear
uniform vec3 wrongColour; // linear
uniform vec2 warp;        // unit, warp direction in the flat piece
uniform float grainStep;  // m between grain lines
uniform float opacity;    // 0 to 1
uniform int show;         // 0: as on paper, 1: both yarns in two tones, 2: a map, 3: the cloth's own look
uniform vec3 warpColour;  // linear, for two tones
uniform vec3 weftColour;  // linear
uniform vec2 mapRange;    // values at the ends of the ramp

const int rampSteps = 9;
uniform vec3 ramp[rampSteps]; // sRGB, evenly spread over mapRange

uniform float sheen;       // 0 to 1, of the right side
uniform float roughness;   // 0.1 to 1
uniform float sheer;       // 0 to 0.9, share of the light let through
uniform bool drawnOut;     // the highlight is drawn together along a float

out vec4 colour;

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

// gloss returns the highlight of threads that run along f on a surface with the
// normal n, of light from l: narrow along the threads, wide across them (G. J.
// Ward, "Measuring and modeling anisotropic reflection", SIGGRAPH 1992, eq. 5a,
// without its norm: looks are judged by eye).
float gloss(vec3 n, vec3 v, vec3 l, vec3 f) {
    vec3 h = normalize(l + v);
    vec2 wide = drawnOut ? vec2(0.8, 2.2) * roughness : vec2(roughness);
    vec2 x = vec2(dot(h, f), dot(h, cross(n, f))) / wide;
    float lit = max(dot(n, l), 0.0);
    return exp(-2.0 * dot(x, x) / (1.0 + dot(h, n))) * lit / sqrt(max(lit * dot(n, v), 0.04));
}

// dressed returns the light that leaves the cloth in its own look, and how much
// of what lies behind it is hidden.
vec4 dressed(vec3 n, vec3 v, float sky) {
    float w = dot(cutPlace, warp), x = dot(cutPlace, vec2(warp.y, -warp.x));
    vec3 albedo = checked(gl_FrontFacing ? rightColour : wrongColour, w, x) * woven(w, x);
    float shine = gl_FrontFacing ? sheen : 0.25 * sheen;
    vec3 t = normalize(warpAlong - n * dot(warpAlong, n));
    vec3 f = floatAcross > 0.5 ? cross(n, t) : t;
    float facing = max(dot(n, v), 0.0);
    float shadow = dot(n, keyDir) > 0.0 ? keyShadow(worldPlace, n) : 0.0;
    vec3 lit = lighted(albedo, n, sky, shadow) * (1.0 - 0.35 * shine);
    // Light that comes through from behind, and fuzz that catches it at the rim.
    lit += albedo * sheer * 0.16 * max(-dot(n, keyDir), 0.0);
    lit += albedo * 0.10 * (1.0 - shine) * pow(1.0 - facing, 3.0) * sky;
    vec3 up = reflect(-v, n);
    vec3 mirror = mix(vec3(0.10, 0.10, 0.10), vec3(0.95, 0.97, 1.0), smoothstep(-0.3, 0.9, up.y)) * sky;
    vec3 tint = mix(albedo / max(max(albedo.r, albedo.g), max(albedo.b, 0.02)), vec3(1.0), 0.5);
    lit += shine * tint * (0.46 * shadow * gloss(n, v, keyDir, f) + 0.14 * gloss(n, v, fillDir, f) * sky + 0.12 * mirror);
    return vec4(lit, 1.0 - pow(sheer, 1.0 / max(facing, 0.2)));
}

void main() {
    vec3 v = normalize(eye - worldPlace);
    vec3 n = towardsEye(normalize(gl_FrontFacing ? rightNormal : -rightNormal), v);
    float sky = gl_FrontFacing ? open.x : open.y;
    if (show == 3) {
        vec4 lit = dressed(n, v, sky);
        colour = vec4(encode(lit.rgb), opacity * lit.a);
        return;
    }
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
