package sim

// loose returns the cloth without the parts that move nothing, as all the nodes that they
// know of are fixed: a third of a drape meter's lies between its plates.
func (c *Cloth) loose(fixed []bool) *Cloth {
	if fixed == nil {
		return c
	}
	out := *c
	moves := func(nodes ...int32) bool {
		for _, n := range nodes {
			if !fixed[n] {
				return true
			}
		}
		return false
	}
	asked := make([]bool, len(fixed)) // where a cell that is kept asks for the curls
	out.cells = kept(c.cells, func(q *cell) bool {
		corners := q.corners()
		keep := false
		for _, n := range corners {
			near := c.stiffness[n].near
			keep = keep || moves(n) || moves(near[:]...)
		}
		for _, n := range corners {
			asked[n] = asked[n] || keep
		}
		return keep
	})
	out.links = kept(c.links, func(l *link) bool { return moves(l.a, l.b) })
	for _, list := range [2]*[]stencil{&out.bendU, &out.bendV} {
		*list = kept(*list, func(s *stencil) bool { return asked[s.o] || moves(s.p, s.o, s.n) })
	}
	out.spans = [2][2]span{spans(out.bendU, out.cells), spans(out.bendV, out.cells)}
	return &out
}

// kept returns those of a list that are to stay.
func kept[T any](list []T, stay func(*T) bool) []T {
	var out []T
	for i := range list {
		if stay(&list[i]) {
			out = append(out, list[i])
		}
	}
	return out
}
