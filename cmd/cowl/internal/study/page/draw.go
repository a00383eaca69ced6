package page

import (
	"fmt"
	"html"
	"math"
	"strconv"
	"strings"
)

// drawing gathers the elements of an SVG, in units that come out as about one
// pixel each where the sheet is read on a phone.
type drawing struct {
	b    strings.Builder
	w, h float64
}

// Colours of the drawings; the inks are those of the sheet.
const (
	inkDark  = "#2b2b2d"
	inkMid   = "#66666a"
	inkFaint = "#e3e0da"
	inkBand  = "#dfe7e6"
	inkForm  = "#d9d9da"
)

// hand tells lines apart by colour and, on a grey printer, by dash and mark.
type hand struct{ colour, dash string }

// hands are far apart for the colour-blind as well.
var hands = []hand{
	{"#2f6f73", ""}, {"#b0651e", "7 3"}, {"#4a4f94", "2 3"}, {"#8c2f39", "9 3 2 3"},
	{"#6b7a1e", "4 2"}, {"#7a4a75", "12 4"}, {"#3d3d40", "1 3"}, {"#1f8fbf", "6 2 2 2 2 2"},
}

// MostLines is how many lines a chart can tell apart.
var MostLines = len(hands)

func handOf(i int) hand { return hands[i%len(hands)] }

// num writes a coordinate.
func num(v float64) string { return strconv.FormatFloat(math.Round(v*10)/10, 'f', -1, 64) }

func (d *drawing) line(x1, y1, x2, y2 float64, colour string, width float64, dash string) {
	fmt.Fprintf(&d.b, `<line x1="%s" y1="%s" x2="%s" y2="%s" stroke="%s" stroke-width="%s"%s/>`,
		num(x1), num(y1), num(x2), num(y2), colour, num(width), dashed(dash))
}

func dashed(dash string) string {
	if dash == "" {
		return ""
	}
	return ` stroke-dasharray="` + dash + `"`
}

// path draws a polyline; fill "none" leaves it open.
func (d *drawing) path(points [][2]float64, colour string, width float64, dash, fill string) {
	if len(points) == 0 {
		return
	}
	d.b.WriteString(`<path d="`)
	for i, p := range points {
		d.b.WriteString(map[bool]string{true: "M", false: "L"}[i == 0] + num(p[0]) + " " + num(p[1]))
	}
	fmt.Fprintf(&d.b, `" fill="%s" stroke="%s" stroke-width="%s" stroke-linejoin="round"%s/>`, fill, colour, num(width),
		dashed(dash))
}

// curve draws a smooth curve through points (E. Catmull, R. Rom, "A class of
// local interpolating splines", 1974, as Bézier arcs).
func (d *drawing) curve(points [][2]float64, colour string, width float64, dash string) {
	if len(points) == 0 {
		return
	}
	d.b.WriteString(`<path d="M` + num(points[0][0]) + " " + num(points[0][1]))
	for i := 1; i < len(points); i++ {
		a, b, c, e := points[max(i-2, 0)], points[i-1], points[i], points[min(i+1, len(points)-1)]
		for k, p := range [3][2]float64{
			{b[0] + (c[0]-a[0])/6, b[1] + (c[1]-a[1])/6}, {c[0] - (e[0]-b[0])/6, c[1] - (e[1]-b[1])/6}, c,
		} {
			d.b.WriteString(map[bool]string{true: "C", false: " "}[k == 0] + num(p[0]) + " " + num(p[1]))
		}
	}
	fmt.Fprintf(&d.b, `" fill="none" stroke="%s" stroke-width="%s" stroke-linejoin="round"%s/>`, colour, num(width),
		dashed(dash))
}

func (d *drawing) rect(x, y, w, h float64, fill string) {
	fmt.Fprintf(&d.b, `<rect x="%s" y="%s" width="%s" height="%s" fill="%s"/>`, num(x), num(y), num(w), num(h), fill)
}

func (d *drawing) dot(x, y, r float64, fill, stroke string) {
	fmt.Fprintf(&d.b, `<circle cx="%s" cy="%s" r="%s" fill="%s" stroke="%s"/>`, num(x), num(y), num(r), fill, stroke)
}

// mark draws the i-th kind of mark: disc, square, diamond, triangle, in turn.
func (d *drawing) mark(i int, x, y float64, colour string) {
	const r = 4.0
	switch i % 4 {
	case 0:
		d.dot(x, y, r, colour, "#fff")
	case 1:
		d.path([][2]float64{{x - r, y - r}, {x + r, y - r}, {x + r, y + r}, {x - r, y + r}, {x - r, y - r}}, "#fff", 1, "",
			colour)
	case 2:
		d.path([][2]float64{{x, y - r - 1}, {x + r + 1, y}, {x, y + r + 1}, {x - r - 1, y}, {x, y - r - 1}}, "#fff", 1, "",
			colour)
	default:
		d.path([][2]float64{{x, y - r - 1}, {x + r + 1, y + r}, {x - r - 1, y + r}, {x, y - r - 1}}, "#fff", 1, "", colour)
	}
}

// words writes text; anchor is start, middle or end.
func (d *drawing) words(x, y float64, text, anchor string, size float64, colour string) {
	fmt.Fprintf(&d.b, `<text x="%s" y="%s" text-anchor="%s" font-size="%s" fill="%s">%s</text>`,
		num(x), num(y), anchor, num(size), colour, html.EscapeString(text))
}

// bold is words in bold.
func (d *drawing) bold(x, y float64, text string, size float64) {
	fmt.Fprintf(&d.b, `<text x="%s" y="%s" font-weight="600" font-size="%s" fill="%s">%s</text>`, num(x), num(y),
		num(size), inkDark, html.EscapeString(text))
}

// wide estimates the width of text; letters of a sans serif are about half as
// wide as high.
func wide(text string, size float64) float64 { return 0.54 * size * float64(len([]rune(text))) }

// svg wraps what was drawn; title is read out to those who cannot see it.
func (d *drawing) svg(title string) string {
	return fmt.Sprintf(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %s %s" role="img" aria-label="%s" font-family="'Helvetica Neue',Arial,'Liberation Sans',sans-serif">%s</svg>`,
		num(d.w), num(d.h), html.EscapeString(title), d.b.String())
}

// ticks returns round values that span lo to hi in about n steps of 1, 2 or 5.
func ticks(lo, hi float64, n int) []float64 {
	if !(hi > lo) {
		hi = lo + 1
	}
	raw := (hi - lo) / float64(n)
	step := math.Pow(10, math.Floor(math.Log10(raw)))
	for _, m := range []float64{1, 2, 5, 10} {
		if m*step >= raw-1e-9*raw {
			step *= m
			break
		}
	}
	var out []float64
	for k := math.Floor(lo/step + 1e-9); k <= math.Ceil(hi/step-1e-9); k++ {
		out = append(out, k*step)
	}
	return out
}

// short writes a value of a scale.
func short(v float64) string {
	if math.Abs(v) < 1e-9 {
		v = 0
	}
	return strings.Replace(strconv.FormatFloat(math.Round(v*1e6)/1e6, 'g', 6, 64), "-", "−", 1)
}
