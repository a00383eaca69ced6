package main

import (
	"fmt"
	"runtime/debug"
)

type versionCmd struct{}

// Run prints the version.
func (versionCmd) Run(c console) error {
	fmt.Fprintln(c.out, version())
	return nil
}

// version tells from what cowl was built, as far as the build knows.
func version() string {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return "cowl, version unknown"
	}
	text := "cowl " + info.Main.Version
	set := map[string]string{}
	for _, s := range info.Settings {
		set[s.Key] = s.Value
	}
	if rev := set["vcs.revision"]; len(rev) >= 12 {
		text += ", commit " + rev[:12]
		if set["vcs.modified"] == "true" {
			text += " with changes"
		}
	}
	return text + ", " + info.GoVersion + ", CGO_ENABLED=" + set["CGO_ENABLED"]
}
