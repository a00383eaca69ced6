package sim

// Bending that softens: M = B0·κ + B1·κ² with B1 < 0, as cantilevers of many
// lengths give it (X. Feng, W. Huang, W. Xu, H. Wang, "Learning-based bending
// stiffness parameter estimation by a drape tester", ACM Trans. Graph. 41(6),
// 2022). With the softening −B1/B0, a length, and q = softening·κ the moment is
// B0·κ·(1 − q). Its slope 1 − 2q must not vanish, or the cloth would crease:
// from where it has fallen to least it stays.
const (
	least = 0.1
	bent  = (1 - least) / 2 // q from which the slope stays
)

// secant returns the moment over B0·κ.
func secant(q float64) float64 {
	if q <= bent {
		return 1 - q
	}
	return least + (bent-bent*bent-least*bent)/q
}

// softened returns the energy over ½B0·κ², twice the integral of the moment.
func softened(q float64) float64 {
	if q <= bent {
		return 1 - 2*q/3
	}
	rest := q - bent
	return (bent*bent - 2*bent*bent*bent/3 + 2*(bent-bent*bent)*rest + least*rest*rest) / (q * q)
}
