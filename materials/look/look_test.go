package look

import (
	"strings"
	"testing"
)

func TestSet(t *testing.T) {
	for _, c := range []struct {
		key, text, want string // want: part of the error, empty for none
	}{
		{"colour", "#C8B08C", ""},
		{"colour", "C8B08C", "want a colour"},
		{"colour", "#000000", "not all black"},
		{"colour", "#C8B08", "want a colour"},
		{"face", "twill", ""},
		{"face", "knit", "want plain, twill"},
		{"float", "weft", ""},
		{"sheen", "1", ""},
		{"sheen", "1.1", "want 0 to 1"},
		{"sheen", "NaN", "want 0 to 1"},
		{"sheer", "0.95", "want 0 to 0.9"},
		{"check_step_mm", "1", "want 2 to 300"},
		{"glitter", "1", "unknown key"},
	} {
		var l Look
		err := l.Set(c.key, c.text)
		if (err == nil) != (c.want == "") || err != nil && !strings.Contains(err.Error(), c.want) {
			t.Errorf("Set(%q, %q) = %v, want an error with %q", c.key, c.text, err, c.want)
		}
	}
}

func TestFinish(t *testing.T) {
	red := Colour{200, 30, 30}
	for _, c := range []struct {
		name string
		look Look
		want string
	}{
		{"colour alone", Look{Colour: red}, ""},
		{"no colour", Look{Sheen: 0.5}, "colour is missing"},
		{"check without width", Look{Colour: red, CheckStep: 0.02}, "smaller check_wide_mm"},
		{"check wider than its step", Look{Colour: red, CheckStep: 0.02, CheckWide: 0.03}, "smaller check_wide_mm"},
	} {
		l := c.look
		err := l.Finish()
		if (err == nil) != (c.want == "") || err != nil && !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: Finish() = %v, want an error with %q", c.name, err, c.want)
		}
		if err == nil && (l.Wrong != red || l.Face != Plain || l.Roughness != 1) {
			t.Errorf("%s: Finish made %+v, want the colour on both sides, plain and matt", c.name, l)
		}
	}
}

// What Lines writes, Set reads back.
func TestLines(t *testing.T) {
	want := Look{Colour{1, 2, 3}, Colour{4, 5, 6}, Satin, Warp, 0.8, 0.25, 0.1, Colour{7, 8, 9}, 0.025, 0.012}
	lines := want.Lines()
	if len(lines) != len(fields) {
		t.Fatalf("%d lines for %d fields", len(lines), len(fields))
	}
	var got Look
	for _, line := range lines {
		key, value, _ := strings.Cut(line, ": ")
		if err := got.Set(key, strings.Trim(value, `"`)); err != nil {
			t.Fatal(err)
		}
	}
	if got != want {
		t.Errorf("read back %+v, want %+v", got, want)
	}
	if (Look{}).Known() || !want.Known() {
		t.Error("Known must tell the zero Look from others")
	}
}
