package main

import (
	"fmt"
	"runtime"
	"runtime/debug"
	"strings"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/licences"
)

type versionCmd struct {
	Licences bool `help:"Print the notices of the licences of what is linked into the program."`
}

// Run prints the version, or the notices.
func (v versionCmd) Run(c console.Console) error {
	fmt.Fprintln(c.Out, version())
	if v.Licences {
		fmt.Fprint(c.Out, notices())
	}
	return nil
}

// notices lists what is linked in with its version and what its licence asks for.
func notices() string {
	versions := map[string]string{"go": runtime.Version()}
	if info, ok := debug.ReadBuildInfo(); ok {
		for _, d := range info.Deps {
			versions[d.Path] = d.Version
		}
	}
	var b strings.Builder
	b.WriteString("\nLinked into this program, each under its own licence:\n")
	for _, n := range licences.All() {
		fmt.Fprintf(&b, "\n%s\n%s %s\n\n%s", strings.Repeat("=", 72), n.Module, versions[n.Module], n.Text)
	}
	return b.String()
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
