layout(location = 0) in vec3 position; // m
layout(location = 1) in vec3 normal;   // unit, right side of the cloth
layout(location = 2) in vec2 flatPlace; // m, in the flat piece
layout(location = 3) in float value;   // what a map shows
layout(location = 4) in vec3 along;    // unit, the way the warp runs
layout(location = 5) in vec2 sky;      // seen on the right and the wrong side, 0 to 1

uniform mat4 camera; // world to clip

out vec3 worldPlace;
out vec3 rightNormal;
out vec3 warpAlong;
out vec2 cutPlace;
out vec2 open; // x: right side, y: wrong side
out float mapValue;
#ifdef KEY_AT_VERTICES
out vec2 keyLit; // x: right side, y: wrong side
#endif

invariant gl_Position; // the cloth is drawn twice, see paintSolid

void main() {
    worldPlace = position;
    rightNormal = normal;
    warpAlong = along;
    cutPlace = flatPlace;
    mapValue = value;
    open = sky;
#ifdef KEY_AT_VERTICES
    keyLit = vec2(keyShadow(position, normal), keyShadow(position, -normal));
#endif
    gl_Position = camera * vec4(position, 1.0);
}
