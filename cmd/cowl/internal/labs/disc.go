package labs

import (
	"bytes"
	"context"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/flags"
	"cowl/mesh/limit"
	"cowl/sim/drape"
	"cowl/sim/lab"
)

type discCmd struct {
	testFlags
	Specimen *flags.Length  `placeholder:"LEN" help:"Diameter of the cloth (30cm); 24cm for limp, 36cm for stiff cloth, 25.4cm on the Japanese meter."`
	Disc     *flags.Length  `placeholder:"LEN" help:"Diameter of the plates (18cm); 12.7cm on the Japanese meter."`
	Grain    *flags.Degrees `placeholder:"DEG" help:"Turn of the warp: only the mesh can feel it."`
	Placings *int           `type:"count" least:"1" most:"48" placeholder:"N" help:"Times the cloth is let fall, 1 to 48 (4)."`
	Fall     string         `enum:"dropped,lowered,slow" default:"lowered" help:"lowered: a table under the cloth goes down, as on the apparatus; dropped: the cloth is let go at once; slow: its weight comes on slowly."`
	Shake    *flags.Length  `placeholder:"LEN" help:"How far the stand goes up and down twice a second, three times, before it is read (0mm), up to 50mm: the Japanese meter is shaken, how far is not published."`
	Fine     bool           `help:"Carry the typical fall on to half the spacing and say what that moved; minutes."`
	Band     bool           `help:"Read it without the friction of bending too: as long again."`
	Gap      *flags.Length  `placeholder:"LEN" help:"Distance kept between layers of the cloth."`
}

// discJSON is what lab disc tells programs.
type discJSON struct {
	Coefficient float64        `json:"drape_coefficient_percent"`
	Spread      float64        `json:"drape_coefficient_sd"` // points, over the placings
	Count       int            `json:"node_count"`           // the most frequent
	Counts      map[string]int `json:"node_counts"`          // placings by number of nodes
	Depths      []float64      `json:"node_depths_mm"`       // of a typical placing
	Specimen    float64        `json:"specimen_mm"`
	Disc        float64        `json:"disc_mm"`
	Fall        string         `json:"fall"`
	Mean        float64        `json:"drape_coefficient_mean_percent"` // over all placings
	Shake       float64        `json:"shake_a"`
	Halved      *drapedJSON    `json:"halved,omitempty"` // the typical placing on half the spacing
	Elastic     *bandJSON      `json:"without_bend_friction,omitempty"`
	Each        []drapedJSON   `json:"each"`
	computed
}

// drapedJSON is one placing.
type drapedJSON struct {
	Coefficient float64 `json:"drape_coefficient_percent"`
	Count       int     `json:"node_count"`
	Energy      float64 `json:"energy_mJ"`
	Residual    float64 `json:"residual"`
}

// Run lets the cloth fall.
func (d discCmd) Run(ctx context.Context, c console.Console) error {
	return d.test(ctx, c, func(s specimen) (reading, error) {
		set, err := d.setup()
		if err != nil {
			return reading{}, err
		}
		set.Friction, set.Report = s.fabric.Friction, s.report
		if err := s.affordable(set, 1); err != nil {
			return reading{}, err
		}
		if err := checkBand(s); d.Band && err != nil {
			return reading{}, err
		}
		r, err := lab.Disc(ctx, s.Stiffness, set)
		if err != nil {
			return reading{}, err
		}
		out := discOf(r, set)
		lines := []string{
			line("Rig", "%.4g cm of cloth on %.4g cm", set.Specimen*100, set.Disc*100),
			line("Drape", "coefficient %.1f %% at the most frequent number of nodes (all %d placings %.1f ± %.1f)",
				out.Coefficient, len(r.Each), out.Mean, out.Spread),
			line("Nodes", "%d; %s", out.Count, countsText(r.Counts)),
			line("Depths", "%s", depthsText(out.Depths)),
		}
		lines = append(lines, halvedText(r))
		if d.Band {
			if out.Elastic, err = band(ctx, s, set); err != nil {
				return reading{}, err
			}
			lines = append(lines, out.Elastic.text(out.Coefficient, out.Count))
		}
		picture, err := shadowPNG(r.Each[r.Typical].Shadow, set)
		return reading{r.Run, func(how computed) any { out.computed = how; return out }, lines,
			[]console.File{{Name: "shadow.png", Data: picture}}}, err
	})
}

// setup reads the flags.
func (d discCmd) setup() (lab.DiscSetup, error) {
	set := lab.DiscSetup{Specimen: 0.30, Disc: 0.18, Grain: grainOf(d.Grain), Fall: lab.Fall(d.Fall)}
	if err := lengths(
		lengthFlag{"specimen", d.Specimen, &set.Specimen}, lengthFlag{"disc", d.Disc, &set.Disc},
		lengthFlag{"spacing", d.Spacing, &set.Spacing}, lengthFlag{"gap", d.Gap, &set.Gap},
	); err != nil {
		return set, err
	}
	set.Placings, set.Fine = countOf(d.Placings), d.Fine
	if d.Shake != nil {
		if r := (limit.Range{Field: "shake", Value: float64(*d.Shake), Hi: 0.05, Unit: limit.Length,
			Why: limit.Say("more than half of its weight throws the cloth")}); r.Check() != nil {
			return set, r.Check()
		}
		set.Shake = float64(*d.Shake) / drape.Amplitude(1)
	}
	return set, nil
}

// halvedText tells what half the spacing reads, or that it was not tried.
func halvedText(r lab.DiscResult) string {
	if r.Halved == nil {
		return line("Halved", "not tried: --fine says how far the coefficient follows the lattice")
	}
	was := r.Each[r.Typical]
	return line("Halved", "the typical placing on %.2g mm reads %.1f %% with %d nodes, on %.2g mm %.1f %% with %d: %+.1f points",
		was.Spacing*1000, was.Coefficient*100, len(was.Nodes), r.Halved.Spacing*1000, r.Halved.Coefficient*100,
		len(r.Halved.Nodes), 100*(r.Halved.Coefficient-was.Coefficient))
}

// discOf turns the result into units.
func discOf(r lab.DiscResult, set lab.DiscSetup) discJSON {
	out := discJSON{Coefficient: r.Coefficient * 100, Spread: r.Spread * 100, Count: r.Count, Counts: map[string]int{},
		Depths: []float64{}, Specimen: set.Specimen * 1000, Disc: set.Disc * 1000, Fall: string(set.Fall),
		Mean: r.Mean * 100, Shake: set.Shake}
	for n, times := range r.Counts {
		out.Counts[strconv.Itoa(n)] = times
	}
	for _, depth := range r.Each[r.Typical].Nodes {
		out.Depths = append(out.Depths, depth*1000)
	}
	for _, e := range r.Each {
		out.Each = append(out.Each, drapedOf(e))
	}
	if r.Halved != nil {
		halved := drapedOf(*r.Halved)
		out.Halved = &halved
	}
	return out
}

func drapedOf(e lab.Draped) drapedJSON {
	return drapedJSON{e.Coefficient * 100, len(e.Nodes), e.Energy * 1000, e.Residual}
}

// countsText lists how often each number of nodes came.
func countsText(counts map[int]int) string {
	var parts []string
	for _, n := range slices.Sorted(maps.Keys(counts)) {
		parts = append(parts, fmt.Sprintf("%d nodes %d×", n, counts[n]))
	}
	return strings.Join(parts, ", ")
}

// depthsText lists depths in whole millimetres.
func depthsText(mm []float64) string {
	if len(mm) == 0 {
		return "none"
	}
	var parts []string
	for _, d := range mm {
		parts = append(parts, fmt.Sprintf("%.0f", d))
	}
	return strings.Join(parts, ", ") + " mm"
}

// shadowPNG draws the shadow, the plate in it and the circle of the flat cloth.
func shadowPNG(s *lab.Shadow, set lab.DiscSetup) ([]byte, error) {
	img := image.NewGray(image.Rect(0, 0, s.Size, s.Size))
	mid := float64(s.Size-1) / 2
	for i, dark := range s.Dark {
		x, y := i%s.Size, i/s.Size
		r := math.Hypot(float64(x)-mid, float64(y)-mid) * s.Pixel
		shade := uint8(255)
		switch {
		case math.Abs(r-set.Disc/2) < s.Pixel:
			shade = 230
		case dark && r < set.Disc/2:
			shade = 120
		case dark:
			shade = 70
		case math.Abs(r-set.Specimen/2) < s.Pixel:
			shade = 170
		}
		img.SetGray(x, y, color.Gray{Y: shade})
	}
	var b bytes.Buffer
	err := png.Encode(&b, img)
	return b.Bytes(), err
}
