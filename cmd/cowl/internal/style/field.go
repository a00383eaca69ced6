package style

import (
	"fmt"
	"slices"
	"strings"

	"cowl/mesh/body"
	"cowl/mesh/draft"
	"cowl/mesh/limit"
	"cowl/sim/drape"
)

// kind says how the value of a field is written.
type kind int

const (
	length kind = iota // key ends in _mm, _cm or _in
	angle              // key ends in _deg
	mass               // key ends in _g
	share              // 0..1, no unit
	count              // whole number, no unit
	choice             // one of several words
	truth              // true or false
)

// Field is one value of a style, a row of the table: the key of the style
// file, the flag and what is written follow from it. What it may be, the draft
// says.
type Field struct {
	Name    string // as in the file, without its unit
	group   string
	kind    kind
	auto    bool   // the word auto is allowed and stands for draft.Auto
	Help    string // of the flag; empty: it has none
	flag    string // where it is not the name with hyphens
	get     func(*Style) float64
	set     func(*Style, float64)
	word    func(float64) string          // of a choice
	parse   func(string) (float64, error) // of a choice
	measure func(*body.Body) *float64     // for the section body
}

// fields is the table, in the order of files and of flags.
var fields = slices.Concat([]Field{
	whole("body", "size", func(s *Style) *int { return &s.Size },
		fmt.Sprintf("Size of the chart, %d to %d in steps of two; single measurements go before it; auto: the chart's "+
			"line at the bust, which is so where a bust is given and no size.", body.SmallestSize, body.LargestSize)).orAuto(),
}, measures(), []Field{
	number("body", "height", length, func(s *Style) *float64 { return &s.Height },
		fmt.Sprintf("Height of the wearer, %.0fcm to %.0fcm: scales what is measured upright and was not given; without "+
			"it the %.0fcm of the chart.", 100*body.LeastHeight, 100*body.MostHeight, 100*body.ChartHeight)),
	oneOf("cut", "side", func(s *Style) *draft.Side { return &s.Cut.Worn }, draft.ParseSide,
		"Where the cowl is worn: front or back; what is said of the centre front, the bust and the neck in other flags "+
			"is the centre back, the shoulder blades and the nape of a back."),
	number("cut", "dart_share", share, func(s *Style) *float64 { return &s.Cut.DartShare },
		"Share of the waist dart closed into the centre front; auto: as much as the extension needs.").orAuto(),
	number("cut", "extension", length, func(s *Style) *float64 { return &s.Cut.Extension },
		"Cloth added to half the edge; auto: what closing the dart gives.").orAuto(),
	oneOf("cut", "how", func(s *Style) *draft.How { return &s.Cut.How }, draft.ParseHow,
		"How cloth is added beyond the dart: pivot, shift or slash."),
	whole("cut", "slashes", func(s *Style) *int { return &s.Cut.Slashes },
		fmt.Sprintf("Number of slashes, 1 to %d, with --how slash.", draft.MostSlashes)),
	number("cut", "cowl_point", length, func(s *Style) *float64 { return &s.Cut.CowlPoint },
		"Where the edge meets the shoulder, from the neck point."),
	number("cut", "facing", length, func(s *Style) *float64 { return &s.Cut.Facing },
		"Depth of the self-facing; 0cm: none."),
	number("cut", "grain", angle, func(s *Style) *float64 { return &s.Cut.Grain },
		"From the centre front to the warp: 0 straight, 45 true bias."),
	number("cut", "trim", length, func(s *Style) *float64 { return &s.Cut.Trim },
		"Allowance outside the seam line.").flagged("allowance"),
	number("cut", "hem", length, func(s *Style) *float64 { return &s.Cut.Hem },
		"How far below the waist the front goes on to its hem, on the centre front and down the side seam; 0cm: it ends "+
			"at the waist."),
	whole("cut", "pleats", func(s *Style) *int { return &s.Cut.Pleats },
		fmt.Sprintf("Pleats in each shoulder seam, 0 to %d.", draft.MostPleats)),
	number("cut", "pleat_depth", length, func(s *Style) *float64 { return &s.Cut.PleatDepth },
		"Depth of a pleat; it takes twice that of cloth."),
	oneOf("cut", "pleats_towards", func(s *Style) *draft.Towards { return &s.Cut.PleatsTo }, draft.ParseTowards,
		"Where the folds of the pleats point: neck or armhole."),
	oneOf("cut", "closure", func(s *Style) *draft.Closure { return &s.Closure }, draft.ParseClosure,
		"Opening to get in by, drawn on paper with notch, stop and note: side (zip), shoulder (buttoned), back (slit) or "+
			"none; it is closed when the cloth hangs."),
	oneOf("cut", "strap", func(s *Style) *draft.Strapping { return &s.Strap }, draft.ParseStrapping,
		"What is sewn over the back from shoulder to shoulder above a back cowl, drawn on paper and not hung: strap, tie "+
			"or none; auto: a strap where neck and shoulders would fall.").orAuto(),

	number("stand", "lower", length, func(s *Style) *float64 { return &s.Stand.Lower },
		"Trim the edge lower on the stand, square to the centre front."),
	number("stand", "take_in", length, func(s *Style) *float64 { return &s.Stand.TakeIn },
		"Cut off the side seam at the waist, to nothing at the underarm."),
	number("stand", "release_waist_at", share, func(s *Style) *float64 { return &s.Stand.ReleaseWaistAt }, ""),
	number("stand", "release_waist", length, func(s *Style) *float64 { return &s.Stand.ReleaseWaist },
		"Slash both halves from the waist to release the cloth."),
	number("stand", "release_armhole_at", share, func(s *Style) *float64 { return &s.Stand.ReleaseArmholeAt }, ""),
	number("stand", "release_armhole", length, func(s *Style) *float64 { return &s.Stand.ReleaseArmhole },
		"Slash both halves from the armhole to release the cloth."),
	number("stand", "weight", mass, func(s *Style) *float64 { return &s.Stand.Weight },
		"Weight sewn to the facing on the centre front, grams.").flagged("cf-weight"),
	yesNo("stand", "stay_shoulder", func(s *Style) *bool { return &s.Stand.StayShoulder },
		"Sew a stay tape along the shoulder seams."),
	yesNo("stand", "stay_edge", func(s *Style) *bool { return &s.Stand.StayEdge }, "Sew a stay tape along the cowl edge."),

	number("hang", "spacing", length, func(s *Style) *float64 { return &s.Hang.Spacing },
		fmt.Sprintf("Between crossings of the lattice, %gmm to %gmm: finer is slower; auto: by the cloth, from %gmm on as "+
			"with --fine, but not where the edge is set, several hands hang, the stand is shaken or the wearer leans.", 1000*drape.Finest,
			1000*drape.Coarsest, 1000*Look)).orAuto(),
	yesNo("hang", "fine", func(s *Style) *bool { return &s.Hang.Fine },
		"Carry the cloth at rest on to half the spacing, until that is near a quarter of its bending length, and say "+
			"what the last halving moved; takes twice to ten times as long."),
	whole("hang", "folds", func(s *Style) *int { return &s.Hang.Folds },
		fmt.Sprintf("Folds that the hand lays down the centre front, 0 to %d; 0: it lets the cloth fall; auto: it tries "+
			"how many the cloth keeps.", drape.MostFolds)).orAuto(),
	number("hang", "edge_depth", length, func(s *Style) *float64 { return &s.Hang.EdgeDepth },
		"How far below the front neck point the edge is set, by lifting the cloth over the cowl points or letting it "+
			"down; auto: as it falls.").orAuto(),
	oneOf("hang", "waist", func(s *Style) *drape.Waist { return &s.Hang.Waist }, drape.ParseWaist,
		"How the waist is held: side, at the side seams as it is worn; pinned, all round as on the stand; free, nowhere; "+
			"auto: side, or free with a hem.").orAuto(),
	yesNo("hang", "shake", func(s *Style) *bool { return &s.Hang.Shake },
		"Say how hard a shake of the stand each fold survives; takes about as long again."),
	number("hang", "lean", angle, func(s *Style) *float64 { return &s.Hang.Lean },
		"Bend the wearer so far forward and up again, and say how far the edge falls from the chest or comes nearer to "+
			"the back, what opens, and whether the folds come back; takes about as long again."),
	yesNo("hang", "free", func(s *Style) *bool { return &s.Hang.Free }, "No form: hang from the two cowl points."),
	whole("hang", "seed", func(s *Style) *uint64 { return &s.Hang.Seed },
		"Which hand places the cloth; same seed, same drape."),
	whole("hang", "placings", func(s *Style) *int { return &s.Hang.Placings },
		"Number of hands; the report tells how far they agree."),
})

// measures lists the body measurements.
func measures() []Field {
	var out []Field
	for _, m := range body.Measures() {
		name, k := strings.ReplaceAll(m.Name, " ", "_"), length
		if m.Unit == limit.Angle {
			k = angle
		}
		f := number("body", name, k, func(s *Style) *float64 { return m.In(&s.Body) }, girths[name])
		if name == "waist" { // --waist says how that of the front is held
			f = f.flagged("waist-girth")
		}
		f.measure = m.In
		f.set = func(s *Style, v float64) { *m.In(&s.Body) = v; s.taken[name] = true }
		out = append(out, f)
	}
	return out
}

// girths are the measurements that have a flag, with its help.
var girths = map[string]string{
	"bust":  "Full girth over the bust; without a size the rest is read off the chart's line at it.",
	"waist": "Full girth of the waist; goes before the chart.",
	"hip":   "Full girth over the seat; goes before the chart.",
}

// number is a field that lives in one float64.
func number(section, name string, k kind, at func(*Style) *float64, help string) Field {
	return Field{group: section, Name: name, kind: k, Help: help,
		get: func(s *Style) float64 { return *at(s) }, set: func(s *Style, v float64) { *at(s) = v }}
}

// orAuto lets the draft choose.
func (f Field) orAuto() Field {
	f.auto = true
	return f
}

// flagged gives the flag a name of its own, where that of the file means something else
// on the command line: a trim cuts the front, a weight is that of a cloth.
func (f Field) flagged(name string) Field {
	f.flag = name
	return f
}

// whole is a field that lives in a whole number.
func whole[T int | uint64](section, name string, at func(*Style) *T, help string) Field {
	return Field{group: section, Name: name, kind: count, Help: help,
		get: func(s *Style) float64 { return float64(*at(s)) }, set: func(s *Style, v float64) { *at(s) = T(v) }}
}

// oneOf is a field that is one of the words of T.
func oneOf[T interface {
	~int
	String() string
}](section, name string, at func(*Style) *T, parse func(string) (T, error), help string) Field {
	return Field{group: section, Name: name, kind: choice, Help: help,
		get: func(s *Style) float64 { return float64(*at(s)) }, set: func(s *Style, v float64) { *at(s) = T(v) },
		word: func(v float64) string { return T(v).String() },
		parse: func(text string) (float64, error) {
			v, err := parse(text)
			return float64(v), err
		}}
}

// yesNo is a field that is true, 1, or false, 0.
func yesNo(section, name string, at func(*Style) *bool, help string) Field {
	return Field{group: section, Name: name, kind: truth, Help: help,
		get: func(s *Style) float64 {
			if *at(s) {
				return 1
			}
			return 0
		}, set: func(s *Style, v float64) { *at(s) = v != 0 }}
}

// spoken is the name of f in messages, as limit.Error has it. The waist of the body
// and how that of the front is held are two, and so are an allowance and a trim on the stand.
func (f Field) spoken() string {
	switch {
	case f.group == "hang" && f.Name == "waist":
		return "hold of the waist"
	case f.Name == "trim":
		return "allowance"
	}
	return strings.ReplaceAll(f.Name, "_", " ")
}

// named returns the field of that name, of two the one whose flag it is too: waist is a
// measurement too. An unknown name panics.
func named(name string) Field {
	own := func(f Field) bool { return f.Name == name && f.Help != "" && f.flag == "" }
	if i := slices.IndexFunc(fields, own); i >= 0 {
		return fields[i]
	}
	return fieldThat(name, func(f Field) bool { return f.Name == name })
}

// fieldThat returns the first field that is meant and has a flag, else the first that is
// meant. None panics with its name.
func fieldThat(name string, meant func(Field) bool) Field {
	i := slices.IndexFunc(fields, func(f Field) bool { return meant(f) && f.Help != "" })
	if i < 0 {
		i = slices.IndexFunc(fields, meant)
	}
	if i < 0 {
		panic("style: no field " + name)
	}
	return fields[i]
}
