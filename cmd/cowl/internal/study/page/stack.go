package page

import (
	"fmt"
	"strings"

	"cowl/cmd/cowl/internal/study/stats"
)

// Stack shows how often each count came, one bar a case.
type Stack struct {
	Title string
	Names []string
	Each  [][]stats.Share // one list a case
	Noun  string          // what is counted
}

// shades go from light to dark with the count.
var shades = []string{"#eef1f0", "#cfdfde", "#9cc0be", "#5f9a9b", "#2f6f73", "#1d4a4d"}

// SVG draws the bars.
func (c Stack) SVG() string {
	d := &drawing{w: chartWide, h: stripTop + stripRow*float64(len(c.Names))}
	d.bold(0, 16, c.Title, 14)
	room, size := names(c.Names)
	most := 0
	for i, shares := range c.Each {
		y := stripTop + stripRow*(float64(i)+0.5)
		d.words(0, y+4, c.Names[i], "start", size, inkDark)
		total := 0
		for _, s := range shares {
			total += s.Times
			most = max(most, s.Count)
		}
		if total == 0 {
			d.words(room, y+4, "none came to rest", "start", letters, inkMid)
		}
		c.bar(d, shares, total, room, y)
	}
	k := newKey(d, 0, d.h+14)
	for n := 0; n <= most; n++ {
		k.entry(fmt.Sprintf("%d %s", n, strings.TrimSuffix(c.Noun, plural(n))), func(x, y float64) {
			d.rect(x, y-6, 24, 12, inkMid)
			d.rect(x+0.7, y-5.3, 22.6, 10.6, shade(n))
		})
	}
	k.close()
	return d.svg(c.Title)
}

// bar draws the shares of a case in the order of their counts.
func (c Stack) bar(d *drawing, shares []stats.Share, total int, room, y float64) {
	long := chartWide - chartRight - room
	x := room
	for n := 0; n < 100; n++ {
		for _, s := range shares {
			if s.Count != n {
				continue
			}
			w := long * float64(s.Times) / float64(total)
			d.rect(x, y-8, w, 16, inkMid)
			d.rect(x+0.7, y-7.3, w-1.4, 14.6, shade(n))
			colour := inkDark
			if n >= 3 {
				colour = "#fff"
			}
			d.words(x+w/2, y+4, fmt.Sprintf("%d: %d of %d", n, s.Times, total), "middle", 11.5, colour)
			x += w
		}
	}
}

func shade(n int) string { return shades[min(n, len(shades)-1)] }

// plural returns what to take off a plural for n of it.
func plural(n int) string {
	if n == 1 {
		return "s"
	}
	return ""
}
