package draft

import (
	"math"

	"cowl/mesh/limit"

	"gonum.org/v1/gonum/spatial/r2"
)

// Lines are the seam lines of the wearer's left half front, as a truing finds
// them: metres, X from CF to the side, Y up.
type Lines struct {
	Shoulder []r2.Vec // cowl point to tip
	Armhole  []r2.Vec // tip to underarm
	Side     []r2.Vec // underarm to waist or hem
	Waist    []r2.Vec // side to CF, at X = 0: waist, which crosses what is left of the dart, or hem
	Dart     []r2.Vec // outer leg end, apex, inner leg end; nil: none is left
	Apex     r2.Vec
}

// Lines returns the seam lines of p.
func (p Cowl) Lines() Lines {
	return Lines{Shoulder: p.Shoulder, Armhole: p.Armhole, Side: p.Side, Waist: p.Waist, Dart: p.DartLeft, Apex: p.Apex}
}

// Redrawn returns p with its half front drawn by l: the edge squared from CF
// to the cowl point, the facing mirrored anew to p's depth, the other half
// folded out, release slashes as long as they were and at the same share of
// their seam. Pleats keep their places down the seam. Extension is counted from p's block, as before; Added stays as
// it was drafted. Lines that do not meet, a facing too deep for the front and
// an outline that crosses itself are errors.
func (p Cowl) Redrawn(l Lines) (Cowl, error) {
	if err := l.check(); err != nil {
		return Cowl{}, err
	}
	f := l.front()
	f.pleats = p.Pleats
	end, edge, err := facing(f, p.Facing)
	if err != nil {
		return Cowl{}, err
	}
	cowl := l.Shoulder[0]
	q := p
	q.Extension += cowl.X - p.HalfEdge
	q.FoldY, q.HalfEdge = cowl.Y, cowl.X
	q.Shoulder, q.Armhole, q.Side, q.Waist = l.Shoulder, l.Armhole, l.Side, l.Waist
	q.DartLeft, q.Apex = l.Dart, l.Apex
	q.FacingEnd, q.FacingEdge = end, edge
	q.rewaisted(p)
	corners := q.corners()
	if err := checkOutline(corners); err != nil {
		return Cowl{}, err
	}
	q.Outline = nil
	for _, c := range corners {
		q.Outline = append(q.Outline, c.at)
	}
	q.CutLine = offset(q.Outline, q.Trim)
	q.Notches = notches(q)
	q.Releases = q.reslashed(p)
	return q, nil
}

// reslashed returns the slashes of p, the piece before, as they lie on q.
func (q Cowl) reslashed(p Cowl) []Release {
	var out []Release
	for k := 0; k < len(p.Releases); k += 2 { // the other half is its mirror
		r := p.Releases[k]
		share, off := foot(p.Waist, r.From)
		seam := q.Waist
		if s, o := foot(p.Armhole, r.From); o < off {
			share, seam = s, q.Armhole
		}
		out = append(out, slit(seam, share, dist(r.From, r.To))...)
	}
	return out
}

// foot returns how far down a line, 0..1, its place nearest to v lies, and how
// far off that is, m.
func foot(line []r2.Vec, v r2.Vec) (share, off float64) {
	off = math.Inf(1)
	down := 0.0
	for i := 1; i < len(line); i++ {
		d := r2.Sub(line[i], line[i-1])
		l := r2.Norm(d)
		t := min(max(r2.Dot(r2.Sub(v, line[i-1]), d)/(l*l), 0), 1)
		if o := dist(v, lerp(line[i-1], line[i], t)); o < off {
			share, off = down+t*l, o
		}
		down += l
	}
	return share / down, off
}

// front returns the half front that carries the facing.
func (l Lines) front() front {
	f := front{shoulder: l.Shoulder, armhole: l.Armhole, side: l.Side[len(l.Side)-1], apex: l.Apex,
		cf: l.Waist[len(l.Waist)-1]}
	f.outer, f.inner = l.Waist[len(l.Waist)/2], l.Waist[len(l.Waist)/2]
	if l.Dart != nil {
		f.outer, f.inner = l.Dart[0], l.Dart[2]
	}
	return f
}

// check says where the lines do not make one outline.
func (l Lines) check() error {
	for _, s := range []struct {
		name string
		line []r2.Vec
	}{{"shoulder", l.Shoulder}, {"armhole", l.Armhole}, {"side", l.Side}, {"waist", l.Waist}} {
		if len(s.line) < 2 {
			return limit.Errorf("piece", "%s has %d points, want 2 or more", s.name, len(s.line))
		}
	}
	last := func(line []r2.Vec) r2.Vec { return line[len(line)-1] }
	for _, s := range []struct {
		name string
		a, b r2.Vec
	}{
		{"shoulder and armhole", last(l.Shoulder), l.Armhole[0]},
		{"armhole and side", last(l.Armhole), l.Side[0]},
		{"side and waist", last(l.Side), l.Waist[0]},
		{"waist and centre front", last(l.Waist), r2.Vec{Y: last(l.Waist).Y}},
	} {
		if d := dist(s.a, s.b); !(d <= samePoint) {
			return limit.Errorf("piece", "%s are %.2f apart where they meet, want 0: draw them to one point", s.name,
				limit.Metres(d))
		}
	}
	if !(l.Shoulder[0].X > 0) || math.IsInf(l.Shoulder[0].X, 1) {
		return limit.Errorf("piece", "cowl point %v from CF, want it on the wearer's left half",
			limit.Metres(l.Shoulder[0].X))
	}
	return nil
}
