package page

// Weave is a small drawing of a plain weave with its directions.
type Weave struct{ Title string }

// SVG draws warp upright, weft level, each over and under the other in turn.
func (w Weave) SVG() string {
	const (
		n    = 8
		step = 15.0
		yarn = 9.0
		left = 44.0
		top  = 8.0
		warp = "#c9b48e"
		weft = "#a3bdbb"
	)
	d := &drawing{w: left + n*step + 10, h: top + n*step + 34}
	for i := range n {
		d.rect(left+float64(i)*step, top, yarn, n*step, warp)
	}
	for j := range n {
		y := top + float64(j)*step + 3
		d.rect(left, y, n*step, yarn, weft)
		for i := range n {
			if (i+j)%2 == 0 { // the warp lies over
				d.rect(left+float64(i)*step, y-1, yarn, yarn+2, warp)
			}
		}
	}
	from, to := [2]float64{left + 4, top + n*step - 6}, [2]float64{left + n*step - 8, top + 6}
	d.path([][2]float64{from, to}, inkDark, 1.8, "", "none")
	d.path([][2]float64{{to[0] - 9, to[1] + 1}, to, {to[0] - 1, to[1] + 9}}, inkDark, 1.8, "", "none")
	d.words(left-6, top+n*step/2, "weft →", "end", 12, inkDark)
	d.words(left, top+n*step+15, "↑ warp", "start", 12, inkDark)
	d.words(left+n*step, top+n*step+30, "true bias ↗", "end", 12, inkDark)
	return d.svg(w.Title)
}
