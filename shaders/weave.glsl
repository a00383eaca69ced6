// What the weave of a cloth shows seen near, as a factor of its colour. All of it
// fades where a thread is smaller than a pixel. Threads are drawn twice as thick
// as they are.
uniform int face;         // 0: plain, 1: twill, 2: satin, 3: crepe, 4: rib
uniform float floatAcross; // 1 where the weft floats, else 0
uniform vec3 checkColour; // linear
uniform float checkStep;  // m; 0: no check
uniform float checkWide;  // m

// thread is a wave of -1 to 1 along x, one a pitch (m).
float thread(float x, float pitch) {
    float pixel = fwidth(x) / pitch;
    return cos(6.2832 * x / pitch) * (1.0 - smoothstep(0.2, 0.55, pixel));
}

// woven returns the factor at w along the warp and x across it, m.
float woven(float w, float x) {
    switch (face) {
    case 1:
        return 1.0 + 0.08 * thread(w + x, 0.0014);
    case 2:
        return 1.0 + 0.03 * thread(mix(x, w, floatAcross), 0.0007);
    case 3:
        return 1.0 + 0.05 * (thread(w + 0.31 * x, 0.0013) * thread(x - 0.23 * w, 0.0011) + thread(0.8 * x + 0.6 * w, 0.0017));
    case 4:
        return 1.0 + 0.10 * thread(w, 0.0016);
    }
    return 1.0 + 0.07 * (thread(w, 0.0010) + thread(x, 0.0010));
}

// checked lays the lines of a check over a colour, on both yarns.
vec3 checked(vec3 base, float w, float x) {
    if (checkStep <= 0.0) {
        return base;
    }
    float lines = 0.5 * (line(w, checkStep, checkWide) + line(x, checkStep, checkWide));
    return mix(base, checkColour, lines);
}
