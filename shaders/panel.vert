layout(location = 0) in vec2 position; // pixels, Y down
layout(location = 1) in vec2 place;    // 0..1 in the atlas of letters
layout(location = 2) in vec4 ink;      // sRGB, straight alpha

uniform vec2 size; // pixels of the picture

out vec2 atlasPlace;
out vec4 inkColour;

void main() {
    atlasPlace = place;
    inkColour = ink;
    gl_Position = vec4(2.0 * position.x / size.x - 1.0, 1.0 - 2.0 * position.y / size.y, 0.0, 1.0);
}
