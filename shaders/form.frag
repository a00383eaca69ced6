in vec3 worldPlace;
in vec3 outNormal;
in float open;

uniform vec3 formColour; // linear

out vec4 colour;

void main() {
    vec3 v = normalize(eye - worldPlace);
    vec3 n = normalize(gl_FrontFacing ? outNormal : -outNormal);
    colour = vec4(encode(shade(formColour, worldPlace, towardsEye(n, v), open)), 1.0);
}
