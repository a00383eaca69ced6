uniform vec3 lineColour; // sRGB, drawn as it is

out vec4 colour;

void main() {
    colour = vec4(lineColour, 1.0);
}
