package draft

import (
	"fmt"
	"math"
	"strconv"

	"cowl/mesh/limit"

	"gonum.org/v1/gonum/spatial/r2"
)

// Strapping is what is sewn from shoulder to shoulder over the back, above a back cowl.
// A tie at the back of the neckline keeps such a top from slipping off the shoulders
// (J. Adams, "What is a back drape?", wiseGEEK, 2024).
type Strapping int

// The strappings.
const (
	NoStrap  Strapping = iota
	Strapped           // one straight strip
	Tied               // two, in a bow on the centre back
)

var strapNames = [...]string{"none", "strap", "tie"}

// String returns the name used on the command line.
func (s Strapping) String() string {
	if s < NoStrap || s > Tied {
		return fmt.Sprintf("Strapping(%d)", int(s))
	}
	return strapNames[s]
}

// ParseStrapping returns the Strapping of a name that String gives.
func ParseStrapping(name string) (Strapping, error) {
	for s, n := range strapNames {
		if n == name {
			return Strapping(s), nil
		}
	}
	return NoStrap, limit.Errorf("strap", "strap %s, want none, strap, tie, or auto: a strap where the neck would "+
		"fall off the shoulders", strconv.Quote(name))
}

// Measures of a strap, m (common practice, from memory).
const (
	strapWide  = 0.020 // of the finished strip
	strapAfter = 0.005 // between the cowl point and the strip in the shoulder seam
	belowNape  = 0.010 // of the strip on the centre back at least: higher, it would ride up the neck
	bowEnd     = 0.300 // of a tie beyond the centre back, for its half of a bow
)

// A back cowl slips off the shoulders if its neck is both wide and low, by common practice,
// from memory; no published figures were found.
const (
	wideNeck = 1. / 3 // of the shoulder is cut away
	lowBack  = 0.10   // m below the nape, of the edge hung alone in an upright plane
)

// Strap is a straight strip, folded lengthwise, that is caught in both shoulder seams and
// runs over the back below the nape. It is cut, and is not hung.
type Strap struct {
	Kind Strapping
	Long float64 // m, finished: of a strap from seam to seam, of a tie that of either strip
	Wide float64 // m, finished
	At   float64 // m, of its middle down the shoulder seam from the cowl point
}

// Slips reports whether a back cowl would fall off the shoulders: its neck is cut further
// out than a third of the shoulder, and its edge hangs more than 10 cm below the nape.
func (p Cowl) Slips() bool {
	return p.Worn == AtBack && p.CowlPoint > wideNeck*p.Block.ShoulderLength() && p.belowNape() > lowBack
}

// belowNape is how far the edge hangs below the nape alone in an upright plane, m.
func (p Cowl) belowNape() float64 {
	_, chain := DropForEdge(p.Block.CowlPoint(p.CowlPoint).X, p.HalfEdge)
	return chain + p.Block.CFNeck.Y - p.Block.CowlPoint(p.CowlPoint).Y
}

// StrapOf returns the strap of that kind for the back cowl p: as long as the way over the
// back block from notch to notch, straight or, where the notches lie too high for that,
// over the centre back 1 cm below the nape. A strap on a cowl at the front is an error.
func (p Cowl) StrapOf(kind Strapping) (*Strap, error) {
	if kind == NoStrap {
		return nil, nil
	}
	if p.Worn == AtFront {
		return nil, limit.Errorf("strap", "strap %v, but the side is front: the back of the neck holds that cowl; want "+
			"none, or side back", kind)
	}
	s := &Strap{Kind: kind, Wide: strapWide, At: strapAfter + strapWide/2}
	from := p.Block.CowlPoint(p.CowlPoint + s.At)
	over := r2.Vec{Y: math.Min(from.Y, p.Block.CFNeck.Y-belowNape)}
	s.Long = 2 * dist(from, over)
	if kind == Tied {
		s.Long = s.Long/2 + bowEnd
	}
	return s, nil
}
