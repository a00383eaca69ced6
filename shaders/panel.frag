in vec2 atlasPlace;
in vec4 inkColour;

uniform sampler2D atlas; // red: how much of a pixel a letter covers

out vec4 colour;

void main() {
    colour = vec4(inkColour.rgb, inkColour.a * texture(atlas, atlasPlace).r);
}
