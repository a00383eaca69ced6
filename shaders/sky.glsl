// How much of the sky a vertex sees: 32 depth maps drawn from directions
// spread over the sphere, asked once a vertex and scene by skylook.vert. Folds are wide against the
// lattice, so the result may be interpolated; this is what makes the valleys
// of the folds and the inside of the neckline dark and soft.
const int skyCount = 32;
uniform sampler2DArrayShadow skyDepth;
uniform mat4 skyView[skyCount]; // world to clip, orthographic
uniform vec3 skyDir[skyCount];  // unit, towards the sky
uniform float skyLift;          // m, keeps a surface from shading itself

// openSky returns 0 (closed in) to 1 (open), cosine-weighted about n.
float openSky(vec3 p, vec3 n) {
    vec3 q = p + skyLift * n;
    float seen = 0.0, all = 1e-6;
    for (int i = 0; i < skyCount; i++) {
        float c = dot(n, skyDir[i]);
        if (c <= 0.0) continue;
        vec3 s = (skyView[i] * vec4(q, 1.0)).xyz * 0.5 + 0.5;
        seen += c * texture(skyDepth, vec4(s.xy, float(i), s.z));
        all += c;
    }
    return seen / all;
}
