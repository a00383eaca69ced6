// The shadow of the key light.
uniform sampler2DShadow keyDepth;
uniform mat4 keyView;   // world to clip, orthographic
uniform vec3 keyDir;    // unit, towards the light
uniform float keyTexel; // m, side of one texel of the shadow map

// keyShadow returns 0 (in shadow) to 1 (lit): 2 × 2 taps, each already a 2 × 2
// comparison, soft over some 2 mm, and a texel apart, so that the holes in the
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
