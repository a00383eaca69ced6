// Stands in for sky.glsl where no depth maps of the sky are drawn: every vertex
// sees most of it.
float openSky(vec3 p, vec3 n) {
    return 0.8;
}
