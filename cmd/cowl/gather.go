package main

import "cowl/cmd/cowl/internal/console"

type gatherCmd struct {
	Dirs  []string `arg:"" name:"dir" help:"Folder of a study, or the folders that its parts were hung in."`
	Out   string   `short:"o" placeholder:"DIR" help:"Folder for the sheet (the first of the folders)."`
	JSON  bool     `name:"json" help:"Print result.json and nothing else."`
	Quiet bool     `short:"q" help:"Print nothing but warnings."`
}

// Run puts the parts of a study together and makes the sheet. What no part has
// hung is marked as missing.
func (d gatherCmd) Run(c console.Console) error {
	out := d.Out
	if out == "" {
		out = d.Dirs[0]
	}
	w := newWorkshop(out, benchFlags{JSON: d.JSON, Quiet: d.Quiet}, partFlag{}.Part, c)
	return w.gather(d.Dirs)
}
