layout(location = 0) in vec3 position; // m
layout(location = 1) in vec3 normal;   // unit, outward
layout(location = 2) in vec2 sky;      // seen outside and inside, 0 to 1

uniform mat4 camera; // world to clip
uniform float inset; // m; where cloth lies on the form its flat triangles would cut through it

out vec3 worldPlace;
out vec3 outNormal;
out float open;

void main() {
    worldPlace = position - inset * normal;
    outNormal = normal;
    open = sky.x;
    gl_Position = camera * vec4(worldPlace, 1.0);
}
