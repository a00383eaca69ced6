//go:build unix && !race

package scalar

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"cowl/materials/worked"
)

// numbered repeats a format with 0, 1, 2 …
func numbered(n int, format string) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, format, i)
	}
	return b.String()
}

// staircase is a mapping within a mapping, n deep, by indentation.
func staircase(n int) string {
	var b strings.Builder
	for i := range n {
		b.WriteString(strings.Repeat(" ", i) + "a:\n")
	}
	return b.String()
}

// Whatever the file, the answer comes within a second and 100 MB, and is short.
// The race detector makes the parser some five times slower, so it sits this out.
func TestHostile(t *testing.T) {
	const many = 30000
	tried := 0
	for _, q := range []struct{ what, data, want string }{
		{"too large", strings.Repeat(" ", mostBytes+1), "larger than 1 MB"},
		{"brackets", strings.Repeat("[", many), "nested"},
		{"brackets behind brackets in quotes", strings.Repeat(`["]",`, 9000), "nested"},
		{"braces", strings.Repeat("{", many), "nested"},
		{"braces with keys", strings.Repeat("{a: ", 15000), "nested"},
		{"hyphens", strings.Repeat("- ", many), "nested"},
		{"question marks", strings.Repeat("? ", many), "nested"},
		{"keys in keys", strings.Repeat("a: ", many), "nested"},
		{"a staircase", staircase(1000), "nested"},
		{"keys", numbered(20000, "k%d: 1\n"), "more than 1000 keys"},
		{"keys in a line", "{" + numbered(20000, "k%d: 1, ") + "}", "more than 1000 keys"},
		{"keys without values", "{a: 1, " + strings.Repeat("x inner, ", 8000) + "b: 2}", "more than 1000 keys"},
		{"a word of half a megabyte", `a: "` + strings.Repeat("Cooper per\trule ", 32000) + `"`,
			"a word of more than 128 kB"},
		{"the same key", strings.Repeat("a:\n", 20000), "more than 1000 keys"},
		{"merge keys", strings.Repeat("<<: ", many), "nested"},
		{"anchors", strings.Repeat("&a ", many), "more than 100 anchors"},
		{"aliases", "a: &x [1]\n" + strings.Repeat("b: [*x]\n", 15000), "more than"},
		{"tags", strings.Repeat("!a ", many), "more than 100 anchors"},
		{"closing brackets", strings.Repeat("]", 2*many), ""},
		{"commas", "a: [" + strings.Repeat(",", 2*many-10), ""},
		{"values in a line", "a: [" + strings.Repeat("x,", 2*many-10) + "]", "nil"},
		{"mappings in a line", "a: [" + strings.Repeat("{a: 1},", many/2-10) + "]", "nil"},
		{"one long word", "a: " + strings.Repeat("x", mostBytes-10), "nil"},
		{"one long quote", "a: \"" + strings.Repeat("x ", mostBytes/2-10), ""},
		{"comments", strings.Repeat("# x\n", many/2), "nil"},
		{"documents", strings.Repeat("--- 1\n", 10000), "more than 100 documents"},
		{"a hundred documents", strings.Repeat("--- 1\n", 100), "100 documents"},
		{"lines", strings.Repeat("\n", 2*many), "nil"},
		{"spaces", strings.Repeat(" ", mostBytes-1), "nil"},
		{"a front of 3000 points", "piece:\n" + numbered(3000, "  - {name: waist, x_cm: -1%d.123456, y_cm: -2.5}\n"), "nil"},
		{"the same in lines", "piece:\n" + numbered(3000, "  - name: waist\n    x_cm: -1%d.1\n    y_cm: -2.5\n"), "nil"},
		{"signs that are no letters", "\x00\x01\x1b[2J: \x7f", "nil"},
	} {
		tried++
		var fault *Fault
		s, took := worked.Watched(t, func() { _, fault = Parse([]byte(q.data), "one style") })
		says := "nil"
		if fault != nil {
			says = fault.Says
		}
		if !strings.Contains(says, q.want) || len(says) > 2*mostShown {
			t.Errorf("%s: Parse says %.300q, want %q in it, and it short", q.what, says, q.want)
		}
		if s > time.Second || took > 100<<20 {
			t.Errorf("%s: took %v and %d MB, want 1 s and 100 MB", q.what, s, took>>20)
		}
		t.Logf("%-34s %8v %4d MB %.60s", q.what, s.Round(time.Millisecond), took>>20, says)
	}
	if tried < 25 {
		t.Errorf("%d files tried, want 25 or more", tried)
	}
}

// An excerpt is 120 letters about its column, whatever the line holds.
func TestExcerpt(t *testing.T) {
	long := strings.Repeat("é", 5000) + "\x1b[2J" + strings.Repeat("ü", 5000)
	for _, column := range []int{0, 1, 5001, 10004, 20000} {
		lines := strings.Split(strings.TrimPrefix(Excerpt([]string{"a", long}, 2, column), "\n"), "\n")
		if len(lines) != 2 || len([]rune(lines[0])) != 9+120 || strings.ContainsRune(lines[0], 0x1b) {
			t.Fatalf("Excerpt in column %d = %q, want 120 letters and a caret", column, lines)
		}
		at := len([]rune(lines[1])) - 1
		if want := min(max(column, 1), 10005); at > 9+120 || column == 5001 && []rune(lines[0])[at] != '�' {
			t.Errorf("Excerpt in column %d has its caret at %d, want under letter %d", column, at, want)
		}
	}
	for _, line := range []int{0, 2, 3} {
		if got := Excerpt([]string{"a", "  "}, line, 1); got != "" {
			t.Errorf("Excerpt of line %d = %q, want none", line, got)
		}
	}
	for text, want := range map[string]string{"a\x1b[2Jb\n": "a�[2Jb�", strings.Repeat("é", 200): strings.Repeat("é",
		119) + "…", "\u202eabc": "�abc"} {
		if got := Brief(text); got != want {
			t.Errorf("Brief(%q) = %q, want %q", text, got, want)
		}
	}
}
