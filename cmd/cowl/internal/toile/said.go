package toile

import (
	"errors"
	"fmt"
	"io/fs"
	"math"

	"cowl/cmd/cowl/internal/say"
	"cowl/cmd/cowl/internal/study"
)

// lately is of how many toiles the line tells.
const lately = 20

// fewest is the number of toiles below which bias and spread mean little.
const fewest = 5

// Said is the line that stands under a prediction: how far the drop of the last toiles
// came out from theirs. It is empty where there is no book, or none of its toiles has a
// drop and a stored prediction of this physics; nothing is hung for it.
func Said(path string) (string, error) {
	b, err := Read(path)
	if errors.Is(err, fs.ErrNotExist) {
		return "", nil
	}
	if err != nil {
		return "", err
	}
	var off []held
	for k := len(b.Toiles) - 1; k >= 0 && len(off) < lately; k-- {
		t := b.Toiles[k]
		if math.IsNaN(t.Drop) {
			continue
		}
		h, ok, err := b.kept(t)
		if err != nil {
			return "", err
		}
		if ok && !math.IsNaN(h.off(figure{kind: Drop})) {
			off = append(off, h)
		}
	}
	return sentence(agreements(off)[Drop]), nil
}

// kept is a toile with the prediction that is stored for it, by as many hands as are
// stored; false where there is none.
func (b Book) kept(t Toile) (held, bool, error) {
	const most = 99
	h, err := b.hanging(t, most)
	if err != nil {
		return held{}, false, err
	}
	stored, err := study.Kept(b.beside(), []study.Hanging{h}, nil)
	if err != nil {
		return held{}, false, err
	}
	out := hold(t, h.Style.Cut.Worn, stored[0])
	return out, len(out.hands) > 0, nil
}

// sentence says the agreement of the drop from the side of the toiles.
func sentence(a agreement) string {
	n := len(a.each)
	if n == 0 {
		return ""
	}
	size := plain(say.InUnit(math.Abs(a.bias)))
	if n > 1 {
		size += " ± " + plain(say.InUnit(a.spread))
	}
	way := "less deep"
	if a.bias < 0 {
		way = "deeper"
	}
	text := fmt.Sprintf("In your last %s the drop came out %s %s %s than cowl toile show predicts", say.Several(n, "toile"), size,
		say.Unit(), way)
	if n < fewest {
		return text + "; so few say little."
	}
	return text + "."
}
