// One key light with a soft shadow, a faint fill from the other side without
// one, a sky from above. Colours are linear; encode() turns the sum into sRGB.
uniform sampler2DShadow keyDepth;
uniform mat4 keyView;   // world to clip, orthographic
uniform vec3 keyDir;    // unit, towards the light
uniform float keyTexel; // m, side of one texel of the shadow map
uniform vec3 fillDir;   // unit, towards the fill
uniform vec3 eye;       // m

// keyShadow returns 0 (in shadow) to 1 (lit): 2 × 2 taps, each already a 2 × 2
// comparison, soft over some 3 mm, and a texel apart, so that the holes in the
// shadow of sheer cloth even out. The place is lifted along the normal by the
// part of the filter that leans into the surface, so that it never shades
// itself (normal-offset shadows, common practice).
float keyShadow(vec3 p, vec3 n) {
    float slant = sqrt(max(0.0, 1.0 - dot(n, keyDir) * dot(n, keyDir)));
    vec3 q = p + n * (0.0008 + 2.5 * keyTexel * slant);
    vec3 s = (keyView * vec4(q, 1.0)).xyz * 0.5 + 0.5;
    vec2 tap = 0.5 / vec2(textureSize(keyDepth, 0));
    return 0.25 * (texture(keyDepth, vec3(s.xy + tap, s.z)) + texture(keyDepth, vec3(s.xy - tap, s.z)) +
        texture(keyDepth, vec3(s.x + tap.x, s.y - tap.y, s.z)) + texture(keyDepth, vec3(s.x - tap.x, s.y + tap.y, s.z)));
}

// towardsEye bends an interpolated normal that leans away from the eye, as
// happens at a silhouette, back to the edge of view.
vec3 towardsEye(vec3 n, vec3 v) {
    float d = dot(n, v);
    return normalize(d < 0.02 ? n + (0.02 - d) * v : n);
}

// lighted returns the light that leaves a matt surface. open is what openSky
// gave. The wrapped part of the key light is not shadowed, only closed in:
// the shadow line then has no hard edge where the light grazes.
vec3 lighted(vec3 albedo, vec3 n, float open, float shadow) {
    float lambert = max(dot(n, keyDir), 0.0);
    float wrapped = max((dot(n, keyDir) + 0.5) / 1.5, 0.0);
    // Closed in does not mean black: the walls pass light on, in their colour.
    vec3 air = mix(0.34 * albedo, vec3(1.0), open);
    vec3 key = vec3(1.00, 0.97, 0.92) * (0.66 * lambert * shadow + 0.16 * wrapped * air);
    vec3 sky = mix(vec3(0.20, 0.19, 0.18), vec3(0.36, 0.37, 0.385), 0.5 + 0.5 * n.y) * air;
    vec3 fill = vec3(0.14, 0.145, 0.15) * max(dot(n, fillDir), 0.0) * (0.25 + 0.75 * air);
    return albedo * (key + sky + fill);
}

vec3 shade(vec3 albedo, vec3 p, vec3 n, float open) {
    return lighted(albedo, n, open, dot(n, keyDir) > 0.0 ? keyShadow(p, n) : 0.0);
}
