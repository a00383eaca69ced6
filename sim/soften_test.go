package sim

import (
	"math"
	"testing"
)

// The moment is B0·κ − s·B0·κ² up to the curvature where its slope is a tenth,
// and a straight line from there; the energy is its integral.
func TestSecant(t *testing.T) {
	moment := func(q float64) float64 {
		if q < 0.45 {
			return q - q*q
		}
		return 0.2475 + 0.1*(q-0.45)
	}
	sum := 0.0
	const step = 1e-4
	for k := range 20_000 {
		q := (float64(k) + 0.5) * step
		sum += moment(q) * step
		if got := q * secant(q); math.Abs(got-moment(q)) > 1e-12 {
			t.Fatalf("moment at %g = %g, want %g", q, got, moment(q))
		}
		end := q + step/2
		if got := end * end * softened(end) / 2; math.Abs(got-sum) > 1e-7 {
			t.Fatalf("energy at %g = %g, want the integral %g", end, got, sum)
		}
	}
}

// A strip whose bending softens hangs as its own elastica: the curvature is what
// the law gives for the moment of the overhang, found by iterating the shape.
func TestOverhangSoftens(t *testing.T) {
	const length, b, weight, soft = 0.035, 10e-6, 0.150, 0.0027 // the median of 251 fabrics (Feng et al. 2022)
	const n = 2000
	var th [n + 1]float64 // below the level, at i·length/n
	ds := length / n
	for range 200 {
		var m [n + 1]float64
		// dM/ds = −V·cos θ with the weight V beyond.
		for i := n - 1; i >= 0; i-- {
			v := weight * Gravity * (length - (float64(i)+0.5)*ds)
			m[i] = m[i+1] + v*math.Cos((th[i]+th[i+1])/2)*ds
		}
		next := 0.0
		var to [n + 1]float64
		for i := range n {
			q := (m[i] + m[i+1]) / 2 / b * soft // soft·κ without softening
			k := (1 - math.Sqrt(1-4*q)) / 2 / soft
			next += k * ds
			to[i+1] = next
		}
		for i := range th {
			th[i] += (to[i] - th[i]) / 2
		}
	}
	var x, y float64
	for i := range n {
		a := (th[i] + th[i+1]) / 2
		x, y = x+math.Cos(a)*ds, y+math.Sin(a)*ds
	}
	want := math.Atan2(y, x) * 180 / math.Pi
	s := limp(weight, b)
	straight := chord(weight * Gravity * length * length * length / b)
	s.Softening = soft
	last := math.Inf(1)
	for _, h := range []float64{0.005, 0.0025, 0.00125} {
		miss := math.Abs(overhang(t, length, h, 0, s) - want)
		t.Logf("%g mm: off by %.3f° from %.2f°; without softening %.2f°", h*1000, miss, want, straight)
		if !(miss < last/3) {
			t.Errorf("overhang at %g mm is off by %.3f°, want a third of the %.3f° at twice the spacing or less", h*1000, miss,
				last)
		}
		last = miss
	}
	if !(last < 0.15) || !(want > straight+2) {
		t.Errorf("overhang off by %.3f°, want 0.15 or less, of %.2f° that lie well above the %.2f° of a straight line", last,
			want, straight)
	}
}
