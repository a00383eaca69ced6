// Package svg reads a flat piece from an SVG picture drawn at full size: width
// and height of the picture carry a unit, or the user gives one for its
// coordinates. Start at Read.
package svg

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"strings"

	"cowl/mesh/paper"
	"cowl/mesh/read/outline"
)

const (
	deepest      = 64    // elements within each other
	mostElements = 20000 // of a picture
	mostLetters  = 1 << 20
)

// Read returns the piece of a picture. Its outline is the closed line whose id
// ends in seam-line, or else the only closed line there is; a closed line whose
// id ends in cut-line is the cut line, open lines are lines inside, and the one
// whose id ends in grain-line is the grain line. said is the unit of the
// coordinates, 0 if width and height of the picture state one.
func Read(r io.Reader, said outline.Unit) (paper.Piece, error) {
	data, err := outline.Bytes(r)
	if err != nil {
		return paper.Piece{}, fmt.Errorf("svg: %w", err)
	}
	p := &picture{said: said}
	if err := p.read(data); err != nil {
		return paper.Piece{}, fmt.Errorf("svg: %w", err)
	}
	f, err := p.found()
	if err != nil {
		return paper.Piece{}, fmt.Errorf("svg: %w", err)
	}
	piece, err := f.Piece()
	if err != nil {
		return paper.Piece{}, fmt.Errorf("svg: %w", err)
	}
	return piece, nil
}

// picture is an SVG while it is read.
type picture struct {
	said  outline.Unit
	lines []line
	count int // points
}

// line is a line of the picture, m, Y up.
type line struct {
	id string
	outline.Chain
}

// read goes through the elements.
func (p *picture) read(data []byte) error {
	d := xml.NewDecoder(bytes.NewReader(data))
	var stack []matrix // of the elements that are open
	elements, hidden := 0, 0
	for {
		tok, err := d.Token()
		if errors.Is(err, io.EOF) && elements > 0 {
			return nil
		}
		if err != nil {
			return fmt.Errorf("no SVG picture: %w", err)
		}
		switch e := tok.(type) {
		case xml.StartElement:
			if elements++; elements > mostElements || len(stack) >= deepest {
				return fmt.Errorf("more than %d elements, or more than %d within each other, want the outline of one piece", mostElements, deepest)
			}
			m, err := p.start(e, stack)
			if err != nil {
				return fmt.Errorf("<%.20s>: %w", e.Name.Local, err)
			}
			stack = append(stack, m)
			if hidden > 0 || unseen(e) {
				hidden++
			} else if err := p.shape(e, m); err != nil {
				return fmt.Errorf("<%.20s>: %w", e.Name.Local, err)
			}
		case xml.EndElement:
			stack = stack[:len(stack)-1]
			hidden = max(hidden-1, 0)
		}
	}
}

// start returns the matrix that holds within an element.
func (p *picture) start(e xml.StartElement, stack []matrix) (matrix, error) {
	switch {
	case len(stack) == 0 && e.Name.Local != "svg":
		return matrix{}, errors.New("the file begins with this, want svg")
	case len(stack) == 0:
		return frame(e, p.said)
	case e.Name.Local == "svg":
		return matrix{}, errors.New("a picture within the picture is not read: ungroup it")
	}
	own, err := transform(attribute(e, "transform"))
	return stack[len(stack)-1].times(own), err
}

// unseen reports whether an element and all within it is not drawn itself.
func unseen(e xml.StartElement) bool {
	switch e.Name.Local {
	case "defs", "symbol", "clipPath", "mask", "marker", "pattern", "metadata":
		return true
	}
	return attribute(e, "display") == "none" || strings.Contains(strings.ReplaceAll(attribute(e, "style"), " ", ""), "display:none")
}

// attribute returns the value of an attribute, "" if it is not there.
func attribute(e xml.StartElement, name string) string {
	for _, a := range e.Attr {
		if a.Name.Local == name && a.Name.Space == "" {
			return a.Value
		}
	}
	return ""
}

// found says which line is what.
func (p *picture) found() (outline.Found, error) {
	f := outline.Found{Name: "Piece"}
	var closed, named []line
	for _, l := range p.lines {
		switch n := len(l.Points); {
		case strings.HasSuffix(l.id, "grain-line") && f.Grain == nil && n > 1:
			f.Grain = (*[2]vec)([]vec{l.Points[0], l.Points[n-1]})
		case l.Closed && strings.HasSuffix(l.id, "seam-line"):
			named = append(named, l)
		case l.Closed && strings.HasSuffix(l.id, "cut-line") && f.Cut == nil:
			f.Cut = l.Points
		case l.Closed:
			closed = append(closed, l)
		case l.id != "":
			f.Lines = append(f.Lines, paper.Line{Name: strings.ReplaceAll(l.id, "-", " "), Kind: paper.Guide, Points: l.Points})
		}
	}
	switch {
	case len(named) == 1:
		f.Outline = named[0].Points
	case len(named) > 1:
		return f, fmt.Errorf("%d lines with an id that ends in seam-line, want one piece a picture", len(named))
	case f.Cut != nil:
		f.Outline, f.Cut = f.Cut, nil
	case len(closed) == 1:
		f.Outline = closed[0].Points
	case len(closed) == 0:
		return f, errors.New("no closed line, want the outline as a path that ends in Z, or a polygon")
	default:
		return f, fmt.Errorf("%d closed lines, want one, or one with the id seam-line", len(closed))
	}
	return f, nil
}
