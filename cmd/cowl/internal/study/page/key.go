package page

// keyLine is the height of a row of a key, px.
const keyLine = 18.0

// key sets entries in rows and makes the drawing taller for them.
type key struct {
	d          *drawing
	left, x, y float64
	any        bool
}

// newKey begins a key at (x, y).
func newKey(d *drawing, x, y float64) *key { return &key{d: d, left: x, x: x, y: y} }

// entry adds a name with its sign, which sign draws from (x, y) over 24 units.
func (k *key) entry(name string, sign func(x, y float64)) {
	need := 30 + wide(name, letters) + 14
	if k.any && k.x+need > k.d.w {
		k.x, k.y = k.left, k.y+keyLine
	}
	k.any = true
	sign(k.x, k.y-4)
	k.d.words(k.x+30, k.y, name, "start", letters, inkDark)
	k.x += need
}

func (k *key) close() {
	if k.any {
		k.d.h = k.y + 8
	}
}
