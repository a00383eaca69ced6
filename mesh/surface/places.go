package surface

// places tells where on the sheet the vertices of a surface lie.
type places struct {
	from   [][2]int32   // len = corners; the ends of an edge of the sheet
	share  []float64    // len = corners; how far a corner lies from the one end to the other
	corner [][3]int32   // len = vertices; of the triangle in which a vertex lies
	weight [][3]float64 // len = vertices; barycentric
}

// whole are the places of a sheet that is drawn as it is.
func whole(n int) places {
	var p places
	for i := range int32(n) {
		p.from, p.share = append(p.from, [2]int32{i, i}), append(p.share, 0)
		p.put([3]int32{i, i, i}, [3]float64{1, 0, 0})
	}
	return p
}

func (p *places) put(corner [3]int32, weight [3]float64) {
	p.corner, p.weight = append(p.corner, corner), append(p.weight, weight)
}

// Carry takes values of the sheet, one a vertex, over to the surface, one a
// vertex of its own: linear between them.
func (p *places) Carry(values []float64) []float64 {
	at := make([]float64, len(p.from))
	for i, f := range p.from {
		at[i] = (1-p.share[i])*values[f[0]] + p.share[i]*values[f[1]]
	}
	out := make([]float64, len(p.corner))
	for i, c := range p.corner {
		w := p.weight[i]
		out[i] = w[0]*at[c[0]] + w[1]*at[c[1]] + w[2]*at[c[2]]
	}
	return out
}
