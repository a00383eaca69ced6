package materials

import "math"

// heart is half a heart loop under its weight. With t from the lowest point
// over half the length, θ the direction of the cloth from the level, and P its
// pull there over B: θ” = P·sin θ + (w·H³/B)·t·cos θ with θ(0) = −π, θ(1) = π/2
// and no way sideways, ∫cos θ = 0. Central differences and Newton; the error of
// the depth is below 2e-5 of the length of the loop.
type heart struct {
	angle              []float64 // rad, at heartLinks + 1 places
	tension            float64   // P·H²
	pivot, step, other []float64 // of the equations
}

const (
	heartLinks = 400
	heartStep  = 0.5 // loop lengths over bending length from one loop to the next
)

// weightless is near the loop without weight.
func weightless() *heart {
	h := &heart{tension: -8.8}
	for _, list := range []*[]float64{&h.angle, &h.pivot, &h.step, &h.other} {
		*list = make([]float64, heartLinks+1)
	}
	for i := range h.angle {
		t := float64(i) / heartLinks
		h.angle[i] = -math.Pi + 2.556*t + (1.5*math.Pi-2.556)*t*t
	}
	return h
}

// settle brings the loop to balance.
func (h *heart) settle(lengths float64) {
	load := lengths * lengths * lengths / 8
	for range 50 {
		h.balance(load)
		if h.correct() < 1e-10 {
			return
		}
	}
}

// balance finds what is missing at each place, and solves for the step that
// makes up for it and the one that a unit of pull wants.
func (h *heart) balance(load float64) {
	const d = 1.0 / heartLinks
	a, k, r, p := h.angle, h.pivot, h.step, h.other
	for i := 1; i < heartLinks; i++ {
		sin, cos := math.Sincos(a[i])
		weight := load * float64(i) * d
		k[i] = -2 - d*d*(h.tension*cos-weight*sin)
		r[i] = 2*a[i] - a[i-1] - a[i+1] + d*d*(h.tension*sin+weight*cos)
		p[i] = d * d * sin
	}
	for i := 2; i < heartLinks; i++ {
		k[i] -= 1 / k[i-1]
		r[i] -= r[i-1] / k[i-1]
		p[i] -= p[i-1] / k[i-1]
	}
	for i := heartLinks - 1; i > 0; i-- {
		r[i] = (r[i] - r[i+1]) / k[i]
		p[i] = (p[i] - p[i+1]) / k[i]
	}
}

// correct takes the step, with as much pull as closes the loop, and returns by
// how much (rad) it wanted to turn a place at most.
func (h *heart) correct() float64 {
	open, by, per := -0.5, 0.0, 0.0 // cos θ(0) = −1 counts half, cos θ(1) = 0
	for i := 1; i < heartLinks; i++ {
		sin, cos := math.Sincos(h.angle[i])
		open += cos
		by += sin * h.step[i]
		per += sin * h.other[i]
	}
	pull, most := (open-by)/per, 0.0
	for i := 1; i < heartLinks; i++ {
		most = math.Max(most, math.Abs(h.step[i]+pull*h.other[i]))
	}
	share := math.Min(1, 0.5/most)
	h.tension += share * pull
	for i := 1; i < heartLinks; i++ {
		h.angle[i] += share * (h.step[i] + pull*h.other[i])
	}
	return most
}

// depth returns that of the lowest point below the clamp over the whole length.
func (h *heart) depth() float64 {
	up := 0.5 // sin θ(1)
	for _, a := range h.angle[1:heartLinks] {
		up += math.Sin(a)
	}
	return -up / (2 * heartLinks)
}
