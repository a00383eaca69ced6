layout(location = 0) in vec3 position; // m, already on the edge of its ribbon

uniform mat4 camera; // world to clip

invariant gl_Position; // the cloth is drawn twice, see paintSolid

void main() {
    gl_Position = camera * vec4(position, 1.0);
}
