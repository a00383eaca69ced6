package fold

import "math"

// match tells which place of to each place of from has become, −1 for none.
// Both ascend. Order is kept, no two become one, and none moves farther than
// bound. Of all ways it takes that of least moves in sum, a loss counting as a
// move of bound: so the crest that stays is not taken for its neighbour when
// one between them goes or comes. Of equal ways the earliest of from move.
func match(from, to []float64, bound float64) []int {
	cost := costs(from, to, bound)
	out := make([]int, 0, len(from))
	for i, j := 0, 0; i < len(from); {
		switch {
		case j < len(to) && cost[i][j] == moved(from[i], to[j], bound)+cost[i+1][j+1]:
			out = append(out, j)
			i, j = i+1, j+1
		case j < len(to) && cost[i][j] == cost[i][j+1]:
			j++
		default:
			out = append(out, -1)
			i++
		}
	}
	return out
}

// costs returns the least sum of moves and losses from place i of from on, with
// the places of to from j on, as row i, column j.
func costs(from, to []float64, bound float64) [][]float64 {
	cost := make([][]float64, len(from)+1)
	for i := len(from); i >= 0; i-- {
		cost[i] = make([]float64, len(to)+1)
		for j := len(to); j >= 0 && i < len(from); j-- {
			cost[i][j] = bound + cost[i+1][j]
			if j < len(to) {
				cost[i][j] = min(cost[i][j], cost[i][j+1], moved(from[i], to[j], bound)+cost[i+1][j+1])
			}
		}
	}
	return cost
}

// moved returns the move from a to b, +Inf beyond bound.
func moved(a, b, bound float64) float64 {
	if d := math.Abs(b - a); d <= bound {
		return d
	}
	return math.Inf(1)
}
