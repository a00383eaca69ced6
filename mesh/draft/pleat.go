package draft

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"

	"cowl/mesh/limit"
	"cowl/mesh/polyline"

	"gonum.org/v1/gonum/spatial/r2"
)

// Towards names the way in which shoulder pleats are laid: where the fold that
// is seen points.
type Towards int

// The ways to lay a pleat.
const (
	Neck Towards = iota
	Armhole
)

// String returns the name used in reports and files.
func (t Towards) String() string {
	if t < Neck || t > Armhole {
		return fmt.Sprintf("Towards(%d)", int(t))
	}
	return [...]string{"neck", "armhole"}[t]
}

// ParseTowards returns the Towards of a name that String gives.
func ParseTowards(name string) (Towards, error) {
	for t := Neck; t <= Armhole; t++ {
		if t.String() == name {
			return t, nil
		}
	}
	return 0, towardsError(strconv.Quote(name))
}

func towardsError(way any) error {
	return limit.Errorf("pleats towards", "pleats towards %v, want neck or armhole", way)
}

// Pleat is a knife pleat in a shoulder seam. It takes twice its depth of cloth:
// the two legs meet when it is folded, and the cloth between them lies beneath,
// towards the tip for a pleat towards the neck and the other way for one
// towards the armhole.
type Pleat struct {
	At    float64 // m, where the legs meet, down the folded seam from the cowl point
	Depth float64 // m
	To    Towards
}

// lies returns where on the folded seam the cloth lies in three layers.
func (p Pleat) lies() (from, to float64) {
	if p.To == Neck {
		return p.At, p.At + p.Depth
	}
	return p.At - p.Depth, p.At
}

// What pleats may be.
const (
	MostPleats            = 4
	leastPleat, mostPleat = 0.005, 0.04 // m, depth
	// pleatLead is kept before the first pleat: the end of the facing is caught
	// there, and six layers would not lie in a shoulder seam.
	pleatLead = 0.025
	// pleatTip keeps pleats out of the armhole seam (common practice: 1 cm).
	pleatTip = 0.010
	// pleatClear is between the end of the facing and the first pleat.
	pleatClear = 0.003
)

// pleats lays those of c evenly into the shoulder seam of b; nil: none.
func (c Cut) pleats(b Block) []Pleat {
	var out []Pleat
	n := float64(c.Pleats)
	gap := (c.pleatRoom(b) - n*c.PleatDepth) / n
	for k := range c.Pleats {
		from := pleatLead + gap/2 + float64(k)*(c.PleatDepth+gap)
		p := Pleat{At: from, Depth: c.PleatDepth, To: c.PleatsTo}
		if p.To == Armhole {
			p.At += p.Depth
		}
		out = append(out, p)
	}
	return out
}

// pleatRoom is the length of shoulder seam that pleats may cover, m.
func (c Cut) pleatRoom(b Block) float64 {
	return b.ShoulderLength() - c.CowlPoint - pleatLead - pleatTip
}

// checkPleats says whether the shoulder of b holds the pleats.
func (c Cut) checkPleats(b Block) error {
	if c.Pleats < 1 || c.Pleats > MostPleats {
		return nil
	}
	var errs []error
	if need, room := float64(c.Pleats)*c.PleatDepth, c.pleatRoom(b); need > room+1e-9 {
		errs = append(errs, limit.Errorf("pleats", "%d pleats of %v cover %v of shoulder, want at most %v: fewer or "+
			"shallower, or the cowl point nearer to the neck",
			c.Pleats, limit.Metres(c.PleatDepth), limit.Metres(need), limit.Metres(math.Max(room, 0))))
	}
	if c.PleatsTo < Neck || c.PleatsTo > Armhole {
		errs = append(errs, towardsError(c.PleatsTo))
	}
	return errors.Join(errs...)
}

// pleated returns f slashed from each pleat to CF at the level of the apex and
// spread there by what the pleat takes, with its hinge on CF: folded, each
// pleat lays the front together as it was. Waist and armhole stay.
func (f front) pleated(pleats []Pleat) front {
	f.pleats = pleats
	hinge, seam := r2.Vec{Y: f.apex.Y}, f.shoulder
	for k := len(pleats) - 1; k >= 0; k-- { // from the lowest up: what lies above swings with it
		at, i := polyline.Along(seam, pleats[k].At)
		swing := about(hinge, -2*math.Asin(math.Min(1, pleats[k].Depth/dist(hinge, at))))
		upper := movedLine(join(slices.Clone(seam[:i+1]), at), swing)
		seam = join(append(upper, at), seam[i+1:]...)
	}
	f.shoulder = seam
	return f
}

// falls says whether the shoulder seam of f still falls from the cowl point: the
// facing is its mirror.
func (f front) falls() error {
	for i := 1; i < len(f.shoulder); i++ {
		d := r2.Sub(f.shoulder[i], f.shoulder[i-1])
		if slope := math.Atan2(-d.Y, d.X); slope < flattest {
			return limit.Errorf("pleats", "with its pleats the shoulder seam slopes %v on the table, want %.0f or more: "+
				"make them fewer or shallower, or close more of the dart",
				limit.Of(slope, limit.Angle), limit.Of(flattest, limit.Angle))
		}
	}
	return nil
}

// takes returns what the pleats take of the flat seam above place At of pleat k.
func takes(pleats []Pleat, k int) float64 {
	var sum float64
	for _, p := range pleats[:k] {
		sum += 2 * p.Depth
	}
	return sum
}

// ShoulderLength returns the length of the shoulder seam with its pleats
// folded, m.
func (p Cowl) ShoulderLength() float64 {
	return polyline.Length(p.Shoulder) - takes(p.Pleats, len(p.Pleats))
}

// Legs returns where the legs of pleat k lie down the flat shoulder seam, m
// from the cowl point.
func (p Cowl) Legs(k int) (a, b float64) {
	a = p.Pleats[k].At + takes(p.Pleats, k)
	return a, a + 2*p.Pleats[k].Depth
}

// Folded returns where the place q down the flat shoulder seam (m from the cowl
// point) lies along the seam with its pleats folded, and the pleat whose
// legs it lies between; −1: none.
func (p Cowl) Folded(q float64) (s float64, pleat int) {
	for k, l := range p.Pleats {
		a, b := p.Legs(k)
		if q < a {
			return q - takes(p.Pleats, k), -1
		}
		if q <= b {
			deep := l.Depth - math.Abs(q-a-l.Depth)
			if l.To == Armhole {
				deep = -deep
			}
			return l.At + deep, k
		}
	}
	return q - takes(p.Pleats, len(p.Pleats)), -1
}

// Unfolded returns where the place s along the folded shoulder seam lies on the
// flat one, on the layer that goes on beyond the pleats, m.
func (p Cowl) Unfolded(s float64) float64 {
	for k, l := range p.Pleats {
		if s <= l.At {
			return s + takes(p.Pleats, k)
		}
	}
	return s + takes(p.Pleats, len(p.Pleats))
}
