package stage

import (
	"image"
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// The turning picture goes over the front and back again: what there is to see
// of a cowl lies there.
const (
	turnArc   = 55 * math.Pi / 180 // to either side
	turnSteps = 22                 // from one side to the other
	turnWide  = 480                // pixels
	turnTall  = 560
)

// TurnDelay is how long each picture of a turn is to be shown, hundredths of a
// second.
const TurnDelay = 8

// Turn draws the scene from one side over the front to the other, from one
// distance, and back: the pictures of the way back are those of the way there.
func (s *Stage) Turn(scene Scene) ([]*image.RGBA, error) {
	scene.Marks = nil
	places := scene.bodice()
	box := Bounds(places)
	middle := r3.Scale(0.5, r3.Add(box.Min, box.Max))
	middle.X = 0
	var dirs []r3.Vec
	away := 0.0
	for i := range turnSteps {
		// Slower towards the ends, where it turns round.
		a := -turnArc * math.Cos(math.Pi*float64(i)/(turnSteps-1))
		d := towards(a, frontHeight)
		dirs = append(dirs, d)
		away = max(away, distance(places, middle, d, float64(turnWide)/turnTall))
	}
	var shots []shot
	for _, d := range dirs {
		shots = append(shots, shot{from(middle, d, away), turnWide, turnTall})
	}
	pictures, err := s.drawAll(scene, shots)
	if err != nil {
		return nil, err
	}
	for i := turnSteps - 2; i > 0; i-- {
		pictures = append(pictures, pictures[i])
	}
	return pictures, nil
}
