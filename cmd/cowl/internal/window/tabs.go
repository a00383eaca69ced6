//go:build cgo

package window

// The tabs that are asked for by number.
const (
	tabCut     = 1
	tabFolds   = 2
	tabStand   = 3
	tabCompare = 5
	tabFiles   = 6
)

var (
	tabNames = []string{"Cloth", "Cut", "Folds", "Stand", "Show", "Compare", "Files"}
	tabHelps = []string{
		"Choose a fabric.",
		"Extension, depth, cowl point, facing, grain and dart.",
		"How the cloth is laid: folds down the centre front, the waist, how open the edge.",
		"What is done on the stand: trim, release slashes, a weight in the facing; bend the wearer.",
		"What the cloth shows: grain, stretch, shear, distance; form, units, size of letters.",
		"Two to four drapes side by side; the grain turned from 0 to 90°.",
		"Open a style; save picture, turning picture, mesh, style and result.",
	}
)
