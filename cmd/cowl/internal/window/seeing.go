//go:build cgo

package window

// seeing is what is shown of form and cloth, in every pane.
type seeing struct {
	show    mapKind
	noForm  bool
	through bool // see-through cloth
	flat    bool // the flat piece is shown
	trace   trace
	tape    tape
}
