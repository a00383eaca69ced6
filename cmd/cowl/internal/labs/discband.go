package labs

import (
	"context"
	"errors"

	"cowl/sim/lab"
)

// bandJSON is what the meter reads of the same cloth without its friction of bending.
type bandJSON struct {
	Coefficient float64 `json:"drape_coefficient_percent"`
	Count       int     `json:"node_count"`
	Held        float64 `json:"friction_length_mm"`    // edge that the friction alone holds flat
	Share       float64 `json:"friction_length_share"` // of the gravity length
}

// checkBand refuses a band of cloth that has no friction of bending.
func checkBand(s specimen) error {
	if s.BendFriction > 0 {
		return nil
	}
	return errors.New("--band: the cloth has no friction of bending, so the meter reads the same with it and " +
		"without; give bend_friction_mN in the fabric, or --bend-friction")
}

// band runs the meter once more without friction of bending. What is measured of the
// friction is a loop at larger bends than most of a drape has, so a drape meter is to read
// between the two.
func band(ctx context.Context, s specimen, set lab.DiscSetup) (*bandJSON, error) {
	elastic := s.Stiffness
	elastic.BendFriction = 0
	set.Fine = false
	r, err := lab.Disc(ctx, elastic, set)
	if err != nil {
		return nil, err
	}
	held := s.fabric.FrictionLength()
	return &bandJSON{r.Coefficient * 100, r.Count, held * 1000, held / s.fabric.GravityLength()}, nil
}

// text says the band, from without friction to what the meter reads with all of it.
func (b bandJSON) text(coefficient float64, count int) string {
	return line("Band", "%.1f %% with %d nodes without friction of bending, %.1f %% with %d with it; it holds an edge of "+
		"%.1f mm flat, %.2f of the gravity length", b.Coefficient, b.Count, coefficient, count, b.Held, b.Share)
}
