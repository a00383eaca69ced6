package materials

import (
	"math"
	"slices"
)

// text is a field of a Fabric that holds words.
type text struct {
	key string
	at  func(*Fabric) *string
}

// texts lists the word fields in file order; the first few head the file, the
// rest close it.
var texts = []text{
	{"name", func(f *Fabric) *string { return &f.Name }},
	{"title", func(f *Fabric) *string { return &f.Title }},
	{"fibre", func(f *Fabric) *string { return &f.Fibre }},
	{"weave", func(f *Fabric) *string { return &f.Weave }},
	{"source", func(f *Fabric) *string { return &f.Source }},
	{"licence", func(f *Fabric) *string { return &f.Licence }},
	{"confidence", func(f *Fabric) *string { return (*string)(&f.Confidence) }},
	{"note", func(f *Fabric) *string { return &f.Note }},
}

// field reads one word or number field.
func (r *reader) field(f *Fabric, e entry) {
	if i := slices.IndexFunc(texts, func(t text) bool { return t.key == e.key }); i >= 0 {
		*texts[i].at(f) = r.word(e)
		return
	}
	for _, q := range Fields() {
		if q.Key() == e.key {
			r.number(f, q, e)
			return
		}
	}
	r.fail(e.line, e.key, "unknown key %q%s", e.key, didYouMean(e.key, fileKeys()))
}

// number reads q from e and marks it as measured; basis may say otherwise.
func (r *reader) number(f *Fabric, q Field, e entry) {
	f.Basis[q] = Evidence{Measured, "as given in the file"}
	v, ok := r.float(e)
	if !ok {
		return
	}
	if err := quantities[q].check(v); err != nil {
		r.refuse(e.line, err)
		return
	}
	quantities[q].set(f, v)
}

// bendMean reads one bending rigidity for both directions.
func (r *reader) bendMean(f *Fabric, e entry) {
	v, ok := r.float(e)
	if !ok {
		return
	}
	mean := quantities[BendWarp]
	mean.key = keyBendMean
	if err := mean.check(v); err != nil {
		r.refuse(e.line, err)
		return
	}
	for _, q := range []Field{BendWarp, BendWeft} {
		quantities[q].set(f, v)
		f.Basis[q] = Evidence{Derived, "one value given for both directions"}
	}
}

// required reports a missing name, weight or bending at the first line, and
// bending given both ways at the line of the mean.
func (r *reader) required(f *Fabric) {
	first := r.firstLine()
	if at, ok := r.line["name"]; !ok {
		r.fail(first, "name", "name is missing, %s", nameWanted)
	} else if !nameForm.MatchString(f.Name) {
		r.fail(at, "name", "name %.120q, %s", f.Name, nameWanted)
	}
	if _, ok := r.line[Weight.Key()]; !ok {
		r.fail(first, Weight.Key(), "%s is missing, want %v", Weight.Key(), quantities[Weight].allowed())
	}
	for _, q := range []Field{BendWarp, BendWeft} {
		_, one := r.line[q.Key()]
		mean, both := r.line[keyBendMean]
		switch {
		case !one && !both:
			r.fail(first, q.Key(), "%s is missing, want %v, or %s for both directions", q.Key(), quantities[q].allowed(),
				keyBendMean)
		case one && both:
			r.fail(mean, keyBendMean, "%s beside %s, want one or the other", keyBendMean, q.Key())
		}
	}
}

// firstLine returns the line of the first key, 1 if there is none.
func (r *reader) firstLine() int {
	if len(r.line) == 0 {
		return 1
	}
	first := math.MaxInt
	for _, line := range r.line {
		first = min(first, line)
	}
	return first
}

// together reports values that are allowed each but not with one another, at
// the later of their lines.
func (r *reader) together(f *Fabric) {
	for _, q := range []Field{TensileWarp, TensileWeft} {
		if err := f.checkTensile(q); err != nil {
			r.refuse(max(r.line[q.Key()], r.line[Shear.Key()]), err)
		}
	}
	if err := f.checkDrape(); err != nil {
		r.refuse(r.line["drape"], err)
	}
	if err := f.checkConfidence(); err != nil {
		r.refuse(r.line["confidence"], err)
	}
}

// basis reads the evidence of values the file gives.
func (r *reader) basis(f *Fabric, e entry) {
	for _, b := range r.mapping(e.value, "basis") {
		q := slices.IndexFunc(Fields(), func(q Field) bool { return q.Key() == b.key })
		if q < 0 {
			r.fail(b.line, b.key, "basis: unknown key %q%s", b.key, didYouMean(b.key, numberKeys()))
			continue
		}
		if f.Basis[q].Kind == Unknown {
			r.fail(b.line, b.key, "basis: %s has no value in the file", b.key)
			continue
		}
		ev, err := evidenceFromText(r.word(b))
		if err != nil {
			r.fail(b.line, b.key, "basis: %s is %v", b.key, err)
			continue
		}
		f.Basis[q] = ev
	}
}

// drape reads a published drape test into f.Drape.
func (r *reader) drape(f *Fabric, e entry) {
	f.Drape = &DrapeMeter{}
	seen := false
	for _, v := range r.mapping(e.value, "drape") {
		if v.key == "note" {
			f.Drape.Note = r.word(v)
			continue
		}
		i := slices.IndexFunc(drapeQuantities, func(q quantity) bool { return q.key == v.key })
		if i < 0 {
			r.fail(v.line, v.key, "drape: unknown key %q%s", v.key, didYouMean(v.key, drapeKeys()))
			continue
		}
		seen = seen || i == 0
		if x, ok := r.float(v); ok {
			drapeQuantities[i].set(f, x)
			if err := drapeQuantities[i].check(x); err != nil {
				r.fail(v.line, v.key, "drape: %v", err)
			}
		}
	}
	if !seen && len(r.errs) == 0 {
		r.fail(e.line, e.key, "drape: coefficient_pct is missing, want %v", drapeQuantities[0].allowed())
	}
}

// drapeKeys returns the keys of a drape test.
func drapeKeys() []string {
	out := []string{"note"}
	for _, q := range drapeQuantities {
		out = append(out, q.key)
	}
	return out
}

// numberKeys returns the keys of the numeric fields.
func numberKeys() []string {
	out := make([]string, 0, numFields)
	for _, q := range Fields() {
		out = append(out, q.Key())
	}
	return out
}

// fileKeys returns every key a fabric file may have at the top.
func fileKeys() []string {
	out := append(numberKeys(), keyBendMean, "basis", "drape", "look", "range", "spread")
	for _, t := range texts {
		out = append(out, t.key)
	}
	return out
}
