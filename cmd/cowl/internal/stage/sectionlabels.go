package stage

import (
	"image"
	"image/color"
	"math"
	"sort"
	"strconv"

	"cowl/mesh/draft"

	"gonum.org/v1/gonum/spatial/r2"
)

var (
	small = lettering{size: 18}
	plain = lettering{size: 21}
	bold  = lettering{bold: true, size: 21}
)

// whole writes x without decimals, and zero without a sign.
func whole(x float64) string { return strconv.Itoa(int(math.Round(x))) }

// drawGrid draws lines every 5 cm over the field, with heights on the left and
// forward distances below.
func drawGrid(k ink, s scale, field image.Rectangle, worn draft.Side) {
	const step = 0.05 // m
	x0, x1 := float64(field.Min.X), float64(field.Max.X)
	y0, y1 := float64(field.Min.Y), float64(field.Max.Y)
	for i := math.Ceil((s.origin.Y - y1) / s.perM / step); ; i++ {
		y := math.Round(s.origin.Y-s.perM*step*i) + 0.5
		if y < y0 {
			break
		}
		k.stroke([]r2.Vec{{X: x0, Y: y}, {X: x1, Y: y}}, 1, inkFaint)
		k.words(whole(100*step*i), r2.Vec{X: x0 - 8, Y: y + 6}, small, 1, inkMid)
	}
	for i := math.Ceil((s.origin.X - x1) / s.perM / step); ; i++ {
		x := math.Round(s.origin.X-s.perM*step*i) + 0.5
		if x < s.left {
			break
		}
		k.stroke([]r2.Vec{{X: x, Y: y0}, {X: x, Y: y1}}, 1, inkFaint)
		k.words(whole(100*step*i), r2.Vec{X: x, Y: y1 + 22}, small, 0.5, inkMid)
	}
	k.words("height, cm", r2.Vec{X: x0 - 36, Y: y0 - 10}, small, 0, inkMid)
	k.words(worn.Say("← forward, cm"), r2.Vec{X: s.left - 20, Y: y1 + 22}, small, 1, inkMid)
}

// foldLabel is one line of text beside the cut.
type foldLabel struct {
	fold   SectionFold
	number int     // 0: not counted
	y      float64 // pixel of its middle
}

// labelFolds numbers the counted folds in the order given and spreads the
// labels, from the highest crest down, so that none lies on another.
func labelFolds(folds []SectionFold, s scale, gap float64) []foldLabel {
	labels := make([]foldLabel, len(folds))
	n := 0
	for i, f := range folds {
		labels[i] = foldLabel{fold: f, y: s.at(f.At).Y}
		if f.Counted {
			n++
			labels[i].number = n
		}
	}
	sort.SliceStable(labels, func(i, j int) bool { return labels[i].y < labels[j].y })
	for i := range labels {
		if i > 0 {
			labels[i].y = max(labels[i].y, labels[i-1].y+gap)
		}
	}
	return labels
}

func drawFolds(k ink, s scale, sec Section, look Look) {
	folds := sec.Folds
	if len(folds) == 0 {
		k.words("no fold", r2.Vec{X: s.left - 38, Y: float64(k.img.Rect.Max.Y) / 2}, plain, 1, inkMid)
	}
	labels := labelFolds(folds, s, 30)
	for _, l := range labels {
		at := s.at(l.fold.At)
		end := r2.Vec{X: s.left - 30, Y: l.y}
		k.stroke([]r2.Vec{end, {X: s.left - 6, Y: l.y}, at}, 1.2, inkMid)
		text, style, colour := whole(l.fold.DepthMM)+" mm deep, "+whole(l.fold.CFmm)+" mm from the edge", plain, inkDark
		if l.number == 0 {
			text, style, colour = whole(l.fold.DepthMM)+" mm deep, "+sec.Worn.Say("below the bust"), small, inkMid
			k.dot(at, 6, look.Accent)
			k.dot(at, 4, look.Background)
		}
		k.words(text, r2.Vec{X: end.X - 8, Y: l.y + 7}, style, 1, colour)
	}
	for _, l := range labels { // badges lie over every leader
		if l.number > 0 {
			badge(k, s.at(l.fold.At), 12, strconv.Itoa(l.number), look)
		}
	}
}

// drawKey says which line is which, in a row above the right end of the field.
func drawKey(k ink, sec Section, field image.Rectangle) {
	x, y := float64(field.Max.X), float64(field.Min.Y)-14
	for _, e := range []struct {
		name   string
		wide   float64
		colour color.RGBA
		there  bool
	}{
		{"form", 1.5, inkMid, len(sec.Form) > 1},
		{"self-facing", 2.5, inkMid, len(sec.Facing) > 1},
		{sec.Worn.String(), 4, inkDark, true},
	} {
		if !e.there {
			continue
		}
		k.words(e.name, r2.Vec{X: x, Y: y}, small, 1, inkMid)
		x -= small.width(e.name) + 10
		k.stroke([]r2.Vec{{X: x - 34, Y: y - 6}, {X: x, Y: y - 6}}, e.wide, e.colour)
		x -= 34 + 28
	}
}
