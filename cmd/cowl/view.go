package main

import (
	"context"
	"errors"
	"fmt"
	"runtime"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/drawn"
	"cowl/cmd/cowl/internal/stage"
	"cowl/cmd/cowl/internal/style"
	"cowl/cmd/cowl/internal/window"
	"cowl/mesh/draft"
	"cowl/sim/drape"
)

// Windows belong to the main thread, on which run stays from here on.
func init() { runtime.LockOSThread() }

type viewCmd struct {
	Style  string  `arg:"" optional:"" help:"Style file in YAML. Without it: the built-in demo."`
	Out    string  `short:"o" placeholder:"DIR" help:"Folder to save to; else the one used last, at first cowl-out."`
	Scale  float64 `placeholder:"N" help:"Size of letters and controls: 1 is 100 %, 2 is 200 %; else that of the display."`
	Width  int     `type:"count" least:"0" most:"16384" default:"0" hidden:"" help:"Pixels of the window."`
	Height int     `type:"count" least:"0" most:"16384" default:"0" hidden:"" help:"Pixels of the window."`
	Frames int     `type:"count" least:"0" most:"100000" default:"0" hidden:"" help:"Draw this many pictures as fast as can be, print their times, end."`
}

// Run opens the window.
func (v viewCmd) Run(ctx context.Context, c console.Console) error {
	if v.Scale != 0 && !(v.Scale >= 0.5 && v.Scale <= 4) {
		return fmt.Errorf("--scale %g, want 0.5 to 4: 1 is 100 %%, 2 is 200 %%", v.Scale)
	}
	s, err := styleFlags{cutFlags: cutFlags{Style: v.Style}}.read()
	if err != nil {
		return err
	}
	if p, err := s.Cowl(); err == nil { // else the window says what is wrong
		if err := viewable(s, p, 1); err != nil {
			return err
		}
	}
	// More threads than cores: the system then shares them out between drawing
	// and walking more evenly than Go does.
	runtime.GOMAXPROCS(runtime.NumCPU() + 2)
	defer console.Heed()()
	err = window.Run(window.Options{
		Style: s, Path: v.Style, Out: v.Out, Scale: v.Scale, Size: [2]int{v.Width, v.Height},
		Save:    saveAll,
		Pattern: patternIn,
		Result:  resultOf,
		Afford:  viewable,
		Context: ctx, Frames: v.Frames,
		Report: func(t window.Timing) {
			fmt.Fprintf(c.Out, "%d pictures of %d points on %s: %.1f ms each (%.0f a second), %.1f ms busy, worst %.1f ms\n",
				t.Pictures, t.Nodes, t.Driver, t.Mean, 1000/t.Mean, t.Busy, t.Worst)
		},
	})
	if errors.Is(err, stage.ErrNoDrawing) {
		return fmt.Errorf("%w: %w", console.ErrNoWindow, err)
	}
	return err
}

// saveAll writes what the window saves.
func saveAll(dir string, files []window.File) error {
	var out []console.File
	for _, f := range files {
		out = append(out, console.File{Name: f.Name, Data: f.Data})
	}
	return console.Save(dir, out)
}

// patternIn draws the flat piece for the window.
func patternIn(s style.Style, p draft.Cowl, format string) ([]window.File, error) {
	files, err := paperFlags{Format: []string{format}, Paper: "both"}.patterns(s, p)
	var out []window.File
	for _, f := range files {
		out = append(out, window.File{Name: f.Name, Data: f.Data})
	}
	return out, err
}

// resultOf writes an outcome as result.json has it.
func resultOf(s style.Style, p draft.Cowl, o drape.Outcome) ([]byte, error) {
	h := &hung{Drape: drawn.Drape{Style: s, Cowl: p, Run: &drape.Run{Outcome: o}}}
	return console.JSON(h.result())
}
