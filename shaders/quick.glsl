// The light of light.glsl without shadows of its own, for cloth that moves: the same
// key light, sky and fill, so that a picture changes little when it comes to rest. Where
// the vertices have asked for the shadow of the key light it lies between them.
uniform vec3 keyDir;  // unit, towards the light
uniform vec3 fillDir; // unit, towards the fill
uniform vec3 eye;     // m

vec3 towardsEye(vec3 n, vec3 v) {
    float d = dot(n, v);
    return normalize(d < 0.02 ? n + (0.02 - d) * v : n);
}

#ifdef KEY_AT_VERTICES
in vec2 keyLit; // x: right side, y: wrong side

float keyShadow(vec3 p, vec3 n) {
    return gl_FrontFacing ? keyLit.x : keyLit.y;
}
#else
float keyShadow(vec3 p, vec3 n) {
    return 0.9;
}
#endif

vec3 lighted(vec3 albedo, vec3 n, float open, float shadow) {
    float lambert = max(dot(n, keyDir), 0.0);
    float wrapped = max((dot(n, keyDir) + 0.5) / 1.5, 0.0);
    vec3 air = mix(0.34 * albedo, vec3(1.0), open);
    vec3 key = vec3(1.00, 0.97, 0.92) * (0.66 * lambert * shadow + 0.16 * wrapped * air);
    vec3 sky = mix(vec3(0.20, 0.19, 0.18), vec3(0.36, 0.37, 0.385), 0.5 + 0.5 * n.y) * air;
    vec3 fill = vec3(0.14, 0.145, 0.15) * max(dot(n, fillDir), 0.0) * (0.25 + 0.75 * air);
    return albedo * (key + sky + fill);
}

vec3 shade(vec3 albedo, vec3 p, vec3 n, float open) {
    return lighted(albedo, n, open, keyShadow(p, n));
}
