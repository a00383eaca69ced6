// Package labs is the verb lab: standard tests of cloth on the solver that drapes it. A test
// is a file; all run through the flags of run.go. Start at [Cmd].
package labs

// Cmd runs the standard tests of cloth on the solver that drapes it.
type Cmd struct {
	Bend    bendCmd    `cmd:"" help:"Cantilever: a strip hangs over an edge."`
	Tensile tensileCmd `cmd:"" name:"pull" help:"A strip under load, at any grain."`
	Disc    discCmd    `cmd:"" help:"Drape meter: a disc of cloth over a smaller plate."`
	Hang    hangCmd    `cmd:"" help:"A sheet hung by two corners."`
	Swag    swagCmd    `cmd:"" help:"A swag: folds laid from pleats at either end of a board."`
	Loop    loopCmd    `cmd:"" help:"Heart loop: a strip clamped by both ends hangs as a tight fold."`
}
