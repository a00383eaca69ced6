// Package svg reads flat pieces from an SVG picture drawn at full size: width
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

// Read returns the pieces of a picture, in its order. Their outlines are the
// closed lines whose ids end in seam-line, or else those in cut-line, or else
// all closed lines. What lies on a piece is its own: a closed line whose id ends
// in cut-line, open lines inside, and as grain line the one whose id ends in
// grain-line. A piece is called what its id says before that end, or else as
// the group that it is alone in, or else by its id. said is the unit of the
// coordinates, 0 if width and height of the picture state one.
func Read(r io.Reader, said outline.Unit) ([]paper.Piece, error) {
	data, err := outline.Bytes(r)
	if err != nil {
		return nil, fmt.Errorf("svg: %w", err)
	}
	if len(data) == 0 {
		return nil, errors.New("svg: empty file, want a picture in SVG")
	}
	p := &picture{said: said}
	if err := p.read(data); err != nil {
		return nil, fmt.Errorf("svg: %w", err)
	}
	pieces, err := p.pieces()
	if err != nil {
		return nil, fmt.Errorf("svg: %w", err)
	}
	return pieces, nil
}

// picture is an SVG while it is read.
type picture struct {
	said   outline.Unit
	lines  []line
	count  int // points
	groups int // groups begun
}

// line is a line of the picture, m, Y up.
type line struct {
	id string
	in group
	outline.Chain
}

// group is the innermost group with a name around a line; number 0: none.
type group struct {
	number int
	name   string
}

// read goes through the elements.
func (p *picture) read(data []byte) error {
	d := xml.NewDecoder(bytes.NewReader(data))
	var stack []open
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
				return fmt.Errorf("more than %d elements, or more than %d within each other, want the outline of one piece",
					mostElements, deepest)
			}
			o, err := p.start(e, stack)
			if err != nil {
				return fmt.Errorf("<%.20s>: %w", e.Name.Local, err)
			}
			stack = append(stack, o)
			if hidden > 0 || unseen(e) {
				hidden++
			} else if err := p.shape(e, o); err != nil {
				return fmt.Errorf("<%.20s>: %w", e.Name.Local, err)
			}
		case xml.EndElement:
			stack = stack[:len(stack)-1]
			hidden = max(hidden-1, 0)
		}
	}
}

// open is an element while it is read: what holds for all within it.
type open struct {
	matrix
	group
}

// start returns what holds within an element.
func (p *picture) start(e xml.StartElement, stack []open) (open, error) {
	switch {
	case len(stack) == 0 && e.Name.Local != "svg":
		return open{}, errors.New("the file begins with this, want svg")
	case len(stack) == 0:
		m, err := frame(e, p.said)
		return open{matrix: m}, err
	case e.Name.Local == "svg":
		return open{}, errors.New("a picture within the picture is not read: ungroup it")
	}
	o := stack[len(stack)-1]
	own, err := transform(attribute(e, "transform"))
	o.matrix = o.times(own)
	if name := named(e); e.Name.Local == "g" && name != "" {
		p.groups++
		o.group = group{p.groups, name}
	}
	return o, err
}

// named returns what the drawer calls an element: the label that a drawing
// program keeps, or else the id.
func named(e xml.StartElement) string {
	for _, a := range e.Attr {
		if a.Name.Local == "label" && a.Name.Space != "" && a.Value != "" {
			return a.Value
		}
	}
	return attribute(e, "id")
}

// unseen reports whether an element and all within it is not drawn itself.
func unseen(e xml.StartElement) bool {
	switch e.Name.Local {
	case "defs", "symbol", "clipPath", "mask", "marker", "pattern", "metadata":
		return true
	}
	return attribute(e, "display") == "none" || strings.Contains(strings.ReplaceAll(attribute(e, "style"), " ", ""),
		"display:none")
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
