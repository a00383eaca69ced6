package study

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strconv"

	"cowl/materials"
)

// doubt is how far a property of a cloth may be from its value.
type doubt struct {
	fields      []materials.Field
	name        string
	least, most float64 // times its value
	normal      bool    // drawn from the bell whose two deviations they are; else evenly
	why         string  // where the ends are from
}

// What is tried where a source gives neither range nor spread: assumptions, by
// how the value is known.
var assumedDoubt = map[materials.Kind]float64{
	materials.Measured: 0.10, materials.Derived: 0.20, materials.Assumed: 0.40, materials.Memory: 0.40,
}

// doubted are the properties that the solver reads.
var doubted = []materials.Field{
	materials.Weight, materials.BendWarp, materials.BendWeft, materials.BendBias, materials.Shear,
	materials.TensileWarp, materials.TensileWeft, materials.Friction, materials.FrictionCloth, materials.BendFriction,
	materials.ShearFriction,
	materials.BendSoftening, materials.ShearLock,
}

// doubtsOf lists the doubts of a cloth. What is zero because nobody measured it
// is left out: there is no telling how far off it is.
func doubtsOf(f materials.Fabric) []doubt {
	var out []doubt
	for _, q := range doubted {
		if q.Value(f) == 0 {
			continue
		}
		d := doubtOf(f, q)
		if n := len(out); q == materials.BendWeft && alike(f) && n > 0 {
			out[n-1].fields, out[n-1].name = []materials.Field{materials.BendWarp, q}, "bending, warp and weft together"
			continue
		}
		out = append(out, d)
	}
	return out
}

// alike reports whether warp and weft bending are one value with one range, as
// where a source gives their mean: then they go up and down together.
func alike(f materials.Fabric) bool {
	return f.BendWarp == f.BendWeft && f.Range[materials.BendWarp] == f.Range[materials.BendWeft] &&
		f.Spread[materials.BendWarp] == f.Spread[materials.BendWeft]
}

// doubtOf says how far one property may be off.
func doubtOf(f materials.Fabric, q materials.Field) doubt {
	d := doubt{fields: []materials.Field{q}, name: q.String()}
	v := q.Value(f)
	switch i, s := f.Range[q], f.Spread[q]; {
	case i.Known():
		d.least, d.most, d.why = i.Low/v, i.High/v, "range of the source"
	case s > 0:
		d.least, d.most, d.normal, d.why = math.Max(0.1, 1-2*s/v), 1+2*s/v, true, "± 2 standard uncertainties of the test"
	default:
		a := assumedDoubt[f.Basis[q].Kind]
		d.least, d.most = 1-a, 1+a
		d.why = fmt.Sprintf("± %.0f %% assumed, none published", a*100)
	}
	may := q.Limits(f) // a locking angle of 70° may not be tried at 77
	d.least, d.most = math.Max(d.least, may.Lo/v), math.Min(d.most, may.Hi/v)
	return d
}

// draw draws how many times its value a property is.
func (d doubt) draw(r *rand.Rand) float64 {
	if !d.normal {
		return d.least + (d.most-d.least)*r.Float64()
	}
	k := 1 + (d.most-1)/2*r.NormFloat64()
	return math.Max(d.least, math.Min(d.most, k))
}

// times returns f with the property k times its value. Bias bending and a loop of
// bending that are by rule from warp and weft follow them.
func (d doubt) times(f materials.Fabric, k float64) materials.Fabric {
	for _, q := range d.fields {
		mean := f.BendWarp + f.BendWeft
		*q.In(&f) *= k
		if f.Basis[materials.BendFriction].Kind == materials.Assumed {
			f.BendFriction *= (f.BendWarp + f.BendWeft) / mean
		}
		if (q == materials.BendWarp || q == materials.BendWeft) && f.Basis[materials.BendBias].Kind == materials.Assumed {
			f.BendBias = materials.PeirceBias(f.BendWarp, f.BendWeft)
		}
	}
	f = assumed(f, d.fields...)
	read, err := materials.Parse(f.Name, f.YAML()) // as the style file is read again
	if err != nil {
		return f // Validate says what is wrong
	}
	return read
}

// round3 writes a value to three figures, without a power of ten.
func round3(v float64) string {
	r, _ := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 3, 64), 64)
	return strconv.FormatFloat(r, 'f', -1, 64)
}

// span writes the ends with their unit.
func (d doubt) span(f materials.Fabric) string {
	v := d.fields[0].InUnits(f)
	text := round3(v*d.least) + " to " + round3(v*d.most)
	if u := d.fields[0].Unit(); u != "" {
		text += " " + u
	}
	return text
}
