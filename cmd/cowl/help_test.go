package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"cowl/cmd/cowl/internal/console"
)

// Every topic shows what its document says, word by word; one that is unknown names those
// that there are.
func TestHelpTopics(t *testing.T) {
	n := 0
	for name, from := range map[string]struct{ file, first, last string }{
		"paper":   {"README.md", "## Back to paper", "## The style file"},
		"style":   {"README.md", "## The style file", "## Flags"},
		"flags":   {"README.md", "## Flags", "## Studies"},
		"studies": {"README.md", "## Studies", "## The window"},
		"window":  {"README.md", "## The window", "## Toiles"},
		"toiles":  {"README.md", "## Toiles", "## result.json"},
		"result":  {"README.md", "## result.json", ""},
		"fabrics": {"../../materials/README.md", "# Fabrics", ""},
		"checks":  {"../../sim/proof/README.md", "# Checks", ""},
		"limits":  {"../../sim/README.md", "## Known limits", "## Words"},
	} {
		n++
		data, err := os.ReadFile(filepath.FromSlash(from.file))
		if err != nil {
			t.Fatal(err)
		}
		_, want, _ := strings.Cut(string(data), "\n"+from.first)
		if from.last != "" {
			want, _, _ = strings.Cut(want, "\n"+from.last)
		}
		if strings.HasPrefix(string(data), from.first) {
			want = strings.TrimPrefix(string(data), from.first)
		}
		want = from.first + want
		got := call(t.Context(), "help", name)
		if got.code != console.ExitOK || strings.Join(strings.Fields(got.out), " ") != strings.Join(strings.Fields(want),
			" ") {
			t.Errorf("cowl help %s = %d, %d letters, want the %d of %s", name, got.code, len(got.out), len(want), from.file)
		}
		if list := call(t.Context(), "help"); !strings.Contains(list.out, "\n  "+name+" ") {
			t.Errorf("cowl help does not name %s", name)
		}
		if got := call(t.Context(), "help", "knitting"); got.code != console.ExitBadInput ||
			!strings.Contains(got.err, name) {
			t.Errorf("cowl help knitting = %d, %q, want %d and %s", got.code, got.err, console.ExitBadInput, name)
		}
	}
	if n != len(topics) {
		t.Errorf("%d topics tried, want all %d", n, len(topics))
	}
}

func TestWrapped(t *testing.T) {
	const text = "one two three\n\n| a table that is long |\n```sh\na command that is long\n```\nfour five\n"
	want := "one two\nthree\n\n| a table that is long |\n```sh\na command that is long\n```\nfour\nfive\n"
	if got := wrapped(text, 8); got != want {
		t.Errorf("wrapped = %q, want %q", got, want)
	}
}

// A word that is none is met with the nearest, or with the words that there are at its place.
func TestNearNames(t *testing.T) {
	for _, q := range []struct{ args, has, not string }{
		{"drap", `did you mean one of "draft", "drape"?`, ""},
		{"foo", "the verbs are draft, drape, view", ""},
		{"teach xyz", "are grain", "drape"},
		{"lab xyz", "bend", "sweep"},
		{"draft --extensoin 8cm", `did you mean "--extension"?`, ""},
		{"swatch --overhang-wrp 3cm", `did you mean "--overhang-warp"?`, ""},
		{"drape --fabric polyestr-twill", "near: polyester-twill", ""},
		{"fabrics wool-tropcal", "near: wool-tropical", ""},
		{"help knitting", "want one of paper", ""},
	} {
		got := call(t.Context(), strings.Fields(q.args)...)
		if got.code != console.ExitBadInput || !strings.Contains(got.err, q.has) || q.not != "" &&
			strings.Contains(got.err, q.not) {
			t.Errorf("cowl %s = %d, %q, want %d, %q in it and not %q", q.args, got.code, got.err, console.ExitBadInput, q.has,
				q.not)
		}
	}
}
