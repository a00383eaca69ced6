package rows

import (
	"fmt"
	"strconv"
	"strings"
)

// Part is one of several shares of a study, for a batch scheduler to spread.
// The zero Part is the whole.
type Part struct{ Number, Of int } // 1..Of

// MostParts is how many shares a study may have: more than a scheduler starts at
// once.
const MostParts = 1000

// UnmarshalText reads "i/n" with 1 ≤ i ≤ n ≤ MostParts.
func (p *Part) UnmarshalText(text []byte) error {
	a, b, ok := strings.Cut(string(text), "/")
	i, err := strconv.Atoi(a)
	n, err2 := strconv.Atoi(b)
	if !ok || err != nil || err2 != nil || i < 1 || i > n || n > MostParts {
		return fmt.Errorf("part %.40q, want i/n with i from 1 to n and n up to %d: 3/8 is the third of eight", text,
			MostParts)
	}
	*p = Part{i, n}
	return nil
}

// Whole reports whether p is all of the study.
func (p Part) Whole() bool { return p.Of <= 1 }

// Has reports whether the n-th row, from 0, belongs to the part. Rows are dealt
// out like cards: neighbours, which take about as long, go to different parts.
func (p Part) Has(n int) bool { return p.Whole() || n%p.Of == p.Number-1 }

// String returns "3/8", "the whole" for the whole.
func (p Part) String() string {
	if p.Whole() {
		return "the whole"
	}
	return fmt.Sprintf("%d/%d", p.Number, p.Of)
}
