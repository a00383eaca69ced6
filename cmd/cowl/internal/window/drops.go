//go:build cgo

package window

// demonstration is the grain turned from step to step, and what the edge makes of it.
type demonstration struct {
	turning    *turning // nil: none goes on
	shownDrops []drop   // of the last one
}

// turning is the demonstration that turns the grain from 0 to 90° and lets the
// cloth come to rest at each angle.
type turning struct {
	pane  *Pane
	step  int
	asked uint64 // serial of the moment at which the angle was asked for

}

// drop is what was read at one angle.
type drop struct {
	angle float64 // °
	edge  float64 // m
	rest  bool    // the cloth had come to rest
}
