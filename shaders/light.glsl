// One key light with a soft shadow (key.glsl), a faint fill from the other side
// without one, a sky from above. Colours are linear; encode() turns the sum into sRGB.
uniform vec3 fillDir;   // unit, towards the fill
uniform vec3 eye;       // m

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
