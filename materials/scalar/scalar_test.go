package scalar

import (
	"testing"

	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/parser"
)

// node returns the value of "k: text".
func node(t *testing.T, text string) ast.Node {
	t.Helper()
	f, err := parser.ParseBytes([]byte("k: "+text+"\n"), 0)
	if err != nil {
		t.Fatal(err)
	}
	switch b := f.Docs[0].Body.(type) {
	case *ast.MappingNode:
		return b.Values[0].Value
	case *ast.MappingValueNode:
		return b.Value
	}
	t.Fatalf("%q is no mapping", text)
	return nil
}

func TestScalars(t *testing.T) {
	for _, q := range []struct {
		text   string
		number float64
		isNum  bool
		word   string
		isWord bool
		shown  string
	}{
		{"8", 8, true, "8", true, "8"},
		{"010", 10, true, "010", true, "010"},
		{"1_000.5", 1000.5, true, "1_000.5", true, "1_000.5"},
		{"-2.5", -2.5, true, "-2.5", true, "-2.5"},
		{".inf", 0, false, "", false, ".inf"},
		{"silk  crepe", 0, false, "silk crepe", true, "silk crepe"},
		{"\"12\"", 0, false, "12", true, `"12"`},
		{"true", 0, false, "", false, "true"},
		{"", 0, false, "", false, "empty"},
		{"[1, 2]", 0, false, "", false, "[1, 2]"},
		{"abcdefghijklmnopqrstuvwxyz abcdefghijklmnopqrstuvwxyz", 0, false,
			"abcdefghijklmnopqrstuvwxyz abcdefghijklmnopqrstuvwxyz", true, "abcdefghijklmnopqrstuvwxyz abcdefghijklm…"},
	} {
		n := node(t, q.text)
		if v, ok := Number(n); ok != q.isNum || ok && v != q.number {
			t.Errorf("Number(%s) = %g, %t, want %g, %t", q.text, v, ok, q.number, q.isNum)
		}
		if w, ok := Word(n); ok != q.isWord || w != q.word {
			t.Errorf("Word(%s) = %q, %t, want %q, %t", q.text, w, ok, q.word, q.isWord)
		}
		if s := Shown(n); s != q.shown {
			t.Errorf("Shown(%s) = %q, want %q", q.text, s, q.shown)
		}
	}
}
