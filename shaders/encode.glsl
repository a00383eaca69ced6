// encode turns linear light into sRGB by three square roots, right to 1 % (I.
// Taylor's fit of the curve, from memory); powers cost too much without a GPU.
vec3 encode(vec3 c) {
    vec3 a = sqrt(clamp(c, 0.0, 1.0));
    vec3 b = sqrt(a);
    return clamp(0.585122381 * a + 0.783140355 * b - 0.368262736 * sqrt(b), 0.0, 1.0);
}
