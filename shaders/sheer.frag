// Sheer cloth throws a sheer shadow: it is drawn with holes, which the filter of
// the shadow, and for the sky the many maps, bring together.
uniform float sheer; // 0 to 0.9, share of the light let through

void main() {
    ivec2 at = ivec2(gl_FragCoord.xy) & 1;
    float hole = at.x == at.y ? (at.x == 0 ? 0.125 : 0.375) : (at.x == 0 ? 0.875 : 0.625);
    if (hole < sheer) {
        discard;
    }
}
