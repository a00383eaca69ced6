package fold

// crest is a local maximum of a sequence.
type crest struct {
	index      int
	prominence float64 // in the unit of the sequence
}

// crests returns the local maxima of h in order, with their topographic
// prominence: how far one must go down from the crest, on the side where that
// is less, before higher ground is reached or the sequence ends.
//
// With open true the ground falls away before h[0]: the first element may be a
// crest, and a crest with no higher ground before it is measured on its far
// side only. Otherwise h[0] is a plain end and never a crest. The last element
// is always a plain end. A level stretch is one crest, at its middle.
func crests(h []float64, open bool) []crest {
	var out []crest
	for i := 0; i < len(h); {
		j := i // last of the level stretch that starts at i
		for j+1 < len(h) && h[j+1] == h[i] {
			j++
		}
		rises := i > 0 && h[i-1] < h[i] || i == 0 && open
		falls := j+1 < len(h) && h[j+1] < h[i]
		if rises && falls {
			at := (i + j) / 2
			if i == 0 {
				at = 0 // a level stretch at the edge is the edge
			}
			out = append(out, crest{at, prominence(h, i, open)})
		}
		i = j + 1
	}
	return out
}

// prominence returns the prominence of the crest at i.
func prominence(h []float64, i int, open bool) float64 {
	before, higher := lowest(h, i, -1)
	after, _ := lowest(h, i, 1)
	if open && !higher {
		return h[i] - after
	}
	return h[i] - max(before, after)
}

// lowest walks from i in steps of dir until it meets higher ground or the end
// and returns the lowest value passed, and whether higher ground was met.
func lowest(h []float64, i, dir int) (low float64, higher bool) {
	low = h[i]
	for k := i + dir; k >= 0 && k < len(h); k += dir {
		if h[k] > h[i] {
			return low, true
		}
		low = min(low, h[k])
	}
	return low, false
}
