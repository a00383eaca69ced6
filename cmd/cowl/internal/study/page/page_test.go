package page

import (
	"bytes"
	"encoding/xml"
	"io"
	"math"
	"regexp"
	"strings"
	"testing"

	"cowl/cmd/cowl/internal/study/stats"
)

// element is a tag as the parser of the standard library, which shares nothing
// with the template, saw it.
type element struct {
	name  string
	attrs map[string]string
	text  string
}

// parsed reads HTML; tags that do not match are an error.
func parsed(t *testing.T, html []byte) []element {
	t.Helper()
	d := xml.NewDecoder(bytes.NewReader(html))
	d.AutoClose, d.Entity, d.Strict = xml.HTMLAutoClose, xml.HTMLEntity, false
	var out []element
	var open []string
	for {
		tok, err := d.Token()
		if err == io.EOF {
			break
		}
		if err != nil {
			t.Fatalf("not well formed: %v", err)
		}
		switch tok := tok.(type) {
		case xml.StartElement:
			e := element{name: tok.Name.Local, attrs: map[string]string{}}
			for _, a := range tok.Attr {
				e.attrs[a.Name.Local] = a.Value
			}
			out, open = append(out, e), append(open, e.name)
		case xml.EndElement:
			if len(open) == 0 || open[len(open)-1] != tok.Name.Local {
				t.Fatalf("</%s> closes %v", tok.Name.Local, open)
			}
			open = open[:len(open)-1]
		case xml.CharData:
			if len(out) > 0 {
				out[len(out)-1].text += string(tok)
			}
		}
	}
	if len(open) > 0 {
		t.Fatalf("left open: %v", open)
	}
	return out
}

// sample is a page with every kind of part and with words that must be escaped.
func sample() Page {
	return Page{
		Title: `Twill <script>alert("x")</script> & co`, Lead: "lead", Findings: []string{"a < b"},
		Facts: []Fact{{"Grain", "45°"}},
		Blocks: []Block{
			{Heading: "Charts", Charts: []Chart{
				Lines{Title: "l", Series: []Series{{Name: `a&b"<`,
					Points: []Point{{X: 0, Y: 1, Half: 1, Dots: []float64{math.NaN(), 2}}, {X: 1, Y: math.NaN()}}}},
					Bands: []Band{{Low: "low", High: "high", X: []float64{0, 1}, LowAt: []float64{1, 1}, HighAt: []float64{2, 3}}}},
				Strip{Title: "s", Rule: math.NaN(), Dots: "d", Mean: "m", Band: "b",
					Rows: []StripRow{{Name: "x", Dots: []float64{1, 2}, Mean: 1.5, Low: math.NaN(), High: math.NaN()},
						{Name: "none", Mean: math.NaN(), Low: 1, High: 2}}},
				Stack{Title: "c", Noun: "folds", Names: []string{"x", "y"},
					Each: [][]stats.Share{{{Count: 1, Times: 2}, {Count: 3, Times: 1}}, nil}},
				Outlines{Title: "o", Form: [][2]float64{{80, 0}, {90, 300}},
					Curves: []Curve{{"c", [][2]float64{{100, 0}, {120, 300}}}}, Top: 140},
				Layout{Title: "y", Outline: [][2]float64{{0, 0}, {100, 0}, {50, 80}}},
			}},
			{Cards: []Card{{Picture: []byte{0xff, 0xd8}, Title: "drawn", Lines: []string{"one"}},
				{Title: "blind", Missing: "no OpenGL"}, {Title: "d", Drawing: Layout{Outline: [][2]float64{{0, 0}, {1, 1}}}}},
				Dense: true, NewPage: true},
			{Table: &Table{Head: []string{"a", "b"}, Rows: []TableRow{{Cells: []string{"1", "2"}, Marked: true}}, Note: "n"},
				List: []Answer{{"Bold", "text"}}, Text: []string{"p"}},
		},
		Cautions: []string{"careful"}, Foot: "made by",
	}
}

// The page is well formed, escapes what it is given, and asks for nothing from
// outside: no script, no link, no address but inlined pictures.
func TestPageAlone(t *testing.T) {
	html, err := sample().HTML()
	if err != nil {
		t.Fatal(err)
	}
	seen := map[string]int{}
	for _, e := range parsed(t, html) {
		seen[e.name]++
		switch e.name {
		case "script", "link", "iframe", "object", "embed", "base", "a", "form":
			t.Errorf("the page has a <%s>", e.name)
		case "style":
			if regexp.MustCompile(`url\(|@import`).MatchString(e.text) {
				t.Error("the style reaches outside")
			}
		case "title":
			if strings.TrimSpace(e.text) != sample().Title {
				t.Errorf("title %q, want %q", e.text, sample().Title)
			}
		}
		for name, value := range e.attrs {
			switch {
			case name == "src" && strings.HasPrefix(value, "data:image/jpeg;base64,/9g="), name == "xmlns":
			case name == "src", name == "href", name == "srcset", strings.HasPrefix(name, "on"), strings.Contains(value, "://"):
				t.Errorf("<%s %s=%q> reaches outside", e.name, name, value)
			}
		}
	}
	for name, want := range map[string]int{"svg": 6, "img": 1, "table": 1, "ol": 1, "h1": 1, "dl": 1, "style": 1} {
		if seen[name] != want {
			t.Errorf("%d <%s>, want %d", seen[name], name, want)
		}
	}
	if bytes.Contains(html, []byte("NaN")) || bytes.Contains(html, []byte("Inf")) {
		t.Error("the page says NaN or Inf")
	}
	again, _ := sample().HTML()
	if !bytes.Equal(html, again) {
		t.Error("the same page gives other bytes")
	}
}

// A table whose rows do not fit its head is a mistake of the program.
func TestTableMisfit(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("a row of one cell under two heads passed")
		}
	}()
	_, _ = Page{Blocks: []Block{{Table: &Table{Head: []string{"a", "b"},
		Rows: []TableRow{{Cells: []string{"1"}}}}}}}.HTML()
}
