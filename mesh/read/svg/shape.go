package svg

import (
	"encoding/xml"
	"fmt"

	"cowl/mesh/read/outline"
)

// shape takes the lines of an element.
func (p *picture) shape(e xml.StartElement, o open) error {
	id := named(e)
	switch e.Name.Local {
	case "path":
		chains, err := pathLines(attribute(e, "d"))
		if err != nil {
			return err
		}
		for _, c := range chains {
			if err := p.add(id, c, o); err != nil {
				return err
			}
		}
	case "polygon", "polyline":
		v, err := numbers(attribute(e, "points"))
		if err != nil {
			return err
		}
		if len(v)%2 != 0 {
			return fmt.Errorf("%d coordinates, want pairs", len(v))
		}
		c := outline.Chain{Closed: e.Name.Local == "polygon"}
		for i := 0; i < len(v); i += 2 {
			c.Points = append(c.Points, vec{X: v[i], Y: v[i+1]})
		}
		return p.add(id, c, o)
	case "line":
		v, err := numbers(attribute(e, "x1") + " " + attribute(e, "y1") + " " + attribute(e, "x2") + " " + attribute(e, "y2"))
		if err != nil {
			return err
		}
		if len(v) == 4 {
			return p.add(id, outline.Chain{Points: []vec{{X: v[0], Y: v[1]}, {X: v[2], Y: v[3]}}}, o)
		}
	}
	return nil
}

// nearEnds is how near the ends of a line must lie for it to be closed (m).
const nearEnds = 0.0005

// add keeps a line, in metres.
func (p *picture) add(id string, c outline.Chain, o open) error {
	if p.count += len(c.Points); p.count > outline.MostPoints {
		return fmt.Errorf("more than %d points, want one pattern of one size", outline.MostPoints)
	}
	for i, v := range c.Points {
		c.Points[i] = o.at(v)
	}
	if n := len(c.Points); n > 3 {
		a, b := c.Points[0], c.Points[n-1]
		c.Closed = c.Closed || (a.X-b.X)*(a.X-b.X)+(a.Y-b.Y)*(a.Y-b.Y) < nearEnds*nearEnds
	}
	if len(c.Points) > 1 {
		p.lines = append(p.lines, line{id, o.group, c})
	}
	return nil
}
