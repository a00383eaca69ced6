package layplan

import (
	"math"

	"cowl/cmd/cowl/internal/say"
	"cowl/mesh/marker"
)

// Figures are those of cowl lay --json: lengths in mm, the waste in percent of the cloth.
type Figures struct {
	Name     string   `json:"name"`
	Pieces   []string `json:"pieces"`
	Width    float64  `json:"width_mm,omitempty"`
	Usable   float64  `json:"usable_width_mm"`
	Nap      bool     `json:"nap"`
	Fits     bool     `json:"fits"`
	Why      string   `json:"why,omitempty"`
	Length   float64  `json:"length_mm"`
	Waste    float64  `json:"waste_percent"`
	Joins    int      `json:"joined_corners"`
	Widths   []Choice `json:"widths"`
	Cheapest *Choice  `json:"cheapest,omitempty"` // of every grain and width
}

// Choice is a width of cloth on a grain and what it takes: lengths in mm, the grain in degrees,
// the cloth bought in mm².
type Choice struct {
	Width  float64 `json:"width_mm"`
	Grain  float64 `json:"grain_deg"`
	Fits   bool    `json:"fits"`
	Length float64 `json:"length_mm"`
	Waste  float64 `json:"waste_percent"`
	Bought float64 `json:"cloth_mm2"`
	Joins  int     `json:"joined_corners"`
}

// Figures returns the figures of the lay; lengths are 0 where it does not fit.
func (p *Plan) Figures() Figures {
	out := Figures{
		Name: p.Style.Name, Width: say.MM(p.Nominal), Usable: say.MM(p.Shown.Cloth.Width), Nap: p.Shown.Cloth.Nap,
		Fits:   p.Err == nil,
		Length: say.MM(p.Shown.Length), Joins: p.Shown.Joins(),
	}
	if p.Err != nil {
		out.Why = p.Err.Error()
	} else {
		out.Waste = p.Shown.Waste() * 100
	}
	for _, q := range p.Pieces {
		out.Pieces = append(out.Pieces, q.Name)
	}
	for _, c := range p.Widths {
		out.Widths = append(out.Widths, choiceOf(c))
	}
	if best, ok := marker.Cheapest(p.Grains); ok {
		c := choiceOf(best)
		out.Cheapest = &c
	}
	return out
}

func choiceOf(c marker.Choice) Choice {
	out := Choice{Width: say.MM(c.Nominal), Grain: math.Round(say.Degrees(c.Grain)*1e6) / 1e6, Fits: c.Err == nil}
	if c.Err == nil {
		out.Length, out.Waste, out.Bought, out.Joins = say.MM(c.Marker.Length), c.Marker.Waste()*100, c.Bought()*1e6,
			c.Marker.Joins()
	}
	return out
}
