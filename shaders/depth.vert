layout(location = 0) in vec3 position; // m
layout(location = 1) in vec3 normal;   // unit

uniform mat4 camera; // world to clip
uniform float inset; // m, as in form.vert; 0 for cloth

void main() {
    gl_Position = camera * vec4(position - inset * normal, 1.0);
}
