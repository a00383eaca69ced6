package stage

// calmed brings what every vertex sees of the sky, two numbers a vertex, half way towards
// what those around it see. Deep in a fold one crossing of a lattice sees out and the next
// does not, and a valley would be dark in a row of spots.
func calmed(sky []float32, tris [][3]int32) []float32 {
	for range 2 {
		sky = calmedOnce(sky, tris)
	}
	return sky
}

func calmedOnce(sky []float32, tris [][3]int32) []float32 {
	sum, near := make([]float32, len(sky)), make([]float32, len(sky)/2)
	for _, t := range tris {
		for k, v := range t {
			for _, w := range [2]int32{t[(k+1)%3], t[(k+2)%3]} {
				sum[2*v] += sky[2*w]
				sum[2*v+1] += sky[2*w+1]
				near[v]++
			}
		}
	}
	out := append([]float32(nil), sky...)
	for i := range out {
		if n := near[i/2]; n > 0 {
			out[i] = (out[i] + sum[i]/n) / 2
		}
	}
	return out
}
