package materials

import (
	"slices"
	"strings"

	"cowl/materials/look"
)

// look reads what the cloth looks like.
func (r *reader) look(f *Fabric, e entry) {
	wrong := len(r.errs)
	for _, v := range r.mapping(e.value, "look") {
		if !slices.Contains(look.Keys(), v.key) {
			r.fail(v.line, v.key, "look: unknown key %q%s", v.key, didYouMean(v.key, look.Keys()))
			continue
		}
		if err := f.Look.Set(v.key, r.word(v)); err != nil {
			r.refuse(v.line, err)
		}
	}
	if len(r.errs) > wrong {
		return
	}
	if err := f.Look.Finish(); err != nil {
		r.refuse(e.line, err)
	}
}

// writeLook writes the look, if there is one, and that it is none of the values.
func writeLook(b *strings.Builder, f Fabric) {
	if !f.Look.Known() {
		return
	}
	b.WriteString("look: # invented for pictures, never measured\n")
	for _, line := range f.Look.Lines() {
		b.WriteString("  " + line + "\n")
	}
}
