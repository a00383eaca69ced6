layout(location = 0) in vec3 position; // m
layout(location = 1) in vec3 normal;   // unit

uniform float inset; // m, as in form.vert; 0 for cloth

out vec2 sky; // how much of it is seen on the right side, and on the wrong side

void main() {
    vec3 p = position - inset * normal;
    sky = vec2(openSky(p, normal), openSky(p, -normal));
    gl_Position = vec4(0.0);
}
