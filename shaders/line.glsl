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
