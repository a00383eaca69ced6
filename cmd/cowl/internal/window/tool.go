//go:build cgo

package window

import (
	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// tool is what the left button does on the cloth.
type tool int

// The tools.
const (
	toolLook tool = iota
	toolGrab
	toolPin
	toolUnpin
	toolTape
	toolWrite
)

var (
	toolNames = []string{"Look", "Grab", "Pin", "Unpin", "Tape", "Write"}
	toolHelps = []string{
		"Drag to turn, right button or Shift to move, wheel to come nearer. Key V.",
		"Take hold of the cloth and pull it; let go of the button and it falls. With Shift it stays held until you let " +
			"go. Key G.",
		"Click the cloth to pin it where it lies. Key P.",
		"Click near a pin to take it out, your own or one of the draft's. Key U.",
		"Click from place to place: the tape is laid along the cloth. Backspace takes a place back, Delete all. Key C.",
		"Drag to where an arrow is to point, or click for a title; then type, and Enter. Saved with the picture. Key N.",
	}
)

// grip is what the hand holds.
type grip struct {
	pane   int
	flat   r2.Vec
	at     r3.Vec // m, where the hand is
	normal r3.Vec // unit, of the plane in which it moves
	stays  bool   // held after the button is let go
	cut    string // the mark of the section by which it was taken; empty: it was taken in the view
}

// mark is the place under the mouse, on the cloth and on the flat piece.
type mark struct {
	pane int
	flat r2.Vec
	at   r3.Vec
	on   bool
}

// mouse is what the mouse does and holds.
type mouse struct {
	tool     tool
	grip     *grip     // what the hand holds
	mark     mark      // the place under the mouse
	slashing *slashing // what is being drawn on the flat piece
	trimming []r2.Vec  // m, the same
	draws    int       // what the mouse draws there
	drag     int       // mouse button that turns or moves the view, −1: none
	pointing bool      // the mouse is seen from afar
}
