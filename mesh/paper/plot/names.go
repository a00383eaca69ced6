package plot

import (
	"slices"

	"cowl/mesh/paper"
	"cowl/mesh/ruler"

	"gonum.org/v1/gonum/spatial/r2"
)

// edgeNames writes the name of each edge inside it, with its allowance where
// they differ, unless the edge is too short for its name or has pleats.
func (d *Drawing) edgeNames(p Placed) {
	least, most := allowances([]paper.Piece{p.Piece})
	for _, e := range p.Piece.Edges {
		edge := stretch(p.Piece.Outline, e)
		if pleated(p.Piece, edge) {
			continue // its pleats stand where the name would
		}
		line := p.all(edge)
		said := short(e.Name)
		if most-least > 1e-6 {
			said = said + ", " + ruler.Spoken().Length(e.Allowance)
		}
		a, b := longest(line)
		room := r2.Norm(r2.Sub(b, a))
		if len(line) > fewPoints { // a curve: half way along it
			a, b = line[len(line)/2-1], line[len(line)/2]
			room = r2.Norm(r2.Sub(line[len(line)-1], line[0])) / 2
		}
		if room > width(said, textSize)+2 {
			d.beside(b, a, 4, Grey, said)
		}
	}
}

// pleated reports whether a pleat is laid into an edge.
func pleated(p paper.Piece, edge []r2.Vec) bool {
	for _, l := range p.Lines {
		if l.Kind == paper.Pleat && slices.ContainsFunc(edge,
			func(v r2.Vec) bool { return r2.Norm(r2.Sub(v, l.Points[0])) < 1e-6 }) {
			return true
		}
	}
	return false
}

// fewPoints is up to how many points an edge is taken to be straight runs.
const fewPoints = 8

// stretch returns the points of an edge of the closed outline.
func stretch(outline []r2.Vec, e paper.Edge) []r2.Vec {
	line := []r2.Vec{outline[e.From]}
	for i := e.From; i != e.To; {
		i = (i + 1) % len(outline)
		line = append(line, outline[i])
	}
	return line
}

// longest returns the ends of the longest straight part of a line.
func longest(line []r2.Vec) (a, b r2.Vec) {
	for i := 1; i < len(line); i++ {
		if r2.Norm(r2.Sub(line[i], line[i-1])) > r2.Norm(r2.Sub(b, a)) {
			a, b = line[i-1], line[i]
		}
	}
	return a, b
}

// labelWide is how wide the words of a label are at their full size (mm).
const labelWide = 80.0

// words writes name and words of the piece, and its other texts.
func (d *Drawing) words(p Placed) {
	mid, name, room := p.At(p.Piece.Label), p.Piece.Name, p.Piece.LabelWide*1000
	if p.Piece.Nest != "" {
		name = p.Piece.Nest
	}
	scale := min(1, room/labelWide, room/width(name, nameSize)) // below 1 where there is little room
	for _, s := range p.Piece.Words {
		scale = min(scale, room/width(s, textSize))
	}
	d.text(Text{name, r2.Vec{X: mid.X, Y: mid.Y - 3*scale}, nameSize * scale, 0, Middle, Ink})
	for i, s := range p.Piece.Words {
		d.text(Text{s, r2.Vec{X: mid.X, Y: mid.Y + (float64(i+1)*lineHeight-1)*scale}, textSize * scale, 0, Middle, Grey})
	}
	for _, t := range p.Piece.Texts {
		d.text(Text{t.Said, p.At(t.At), textSize, 0, Middle, Grey})
	}
}
