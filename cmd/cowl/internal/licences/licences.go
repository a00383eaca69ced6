// Package licences holds the notices of what is linked into cowl, as their licences
// ask for them to be passed on. The test of this package writes them anew with -update
// and tells where one is missing. Start at All.
package licences

import (
	"embed"
	"slices"
	"strings"
)

//go:embed notices/*.txt
var notices embed.FS

// Notice is what one module asks to be passed on.
type Notice struct {
	Module string // path; "go" is the language and its library
	Text   string
}

// All returns the notices, Go's first.
func All() []Notice {
	entries, err := notices.ReadDir("notices")
	if err != nil {
		panic("licences: " + err.Error())
	}
	var out []Notice
	for _, e := range entries {
		text, err := notices.ReadFile("notices/" + e.Name())
		if err != nil {
			panic("licences: " + err.Error())
		}
		out = append(out, Notice{module(e.Name()), string(text)})
	}
	slices.SortFunc(out, func(a, b Notice) int {
		if (a.Module == "go") != (b.Module == "go") {
			return map[bool]int{true: -1, false: 1}[a.Module == "go"]
		}
		return strings.Compare(a.Module, b.Module)
	})
	return out
}

// module is whose notices a file holds: its name with ~ for the slashes of the module.
func module(file string) string {
	return strings.ReplaceAll(strings.TrimSuffix(file, ".txt"), "~", "/")
}
