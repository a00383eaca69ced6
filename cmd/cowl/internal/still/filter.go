package still

// Filters of a row, by their numbers in a file.
const (
	sub   = 1 // less the pixel to the left
	up    = 2 // less the one above
	paeth = 4 // less that of the two and the one between them which is nearest to what they make expected
)

// filters are rows filtered in several ways.
type filters struct{ sub, up, paeth []byte }

// append adds the number of a filter and the row filtered by it to dst: the one whose
// numbers are the smallest in all, which is likely to pack best (ISO/IEC 15948, 12.8).
func (f *filters) append(dst, row, above []byte) []byte {
	if len(f.sub) != len(row) {
		f.sub, f.up, f.paeth = make([]byte, len(row)), make([]byte, len(row)), make([]byte, len(row))
	}
	var sums [3]int
	for i, v := range row {
		var left, corner byte
		if i > 2 {
			left, corner = row[i-3], above[i-3]
		}
		f.sub[i], f.up[i], f.paeth[i] = v-left, v-above[i], v-expected(left, above[i], corner)
		sums[0] += size(f.sub[i])
		sums[1] += size(f.up[i])
		sums[2] += size(f.paeth[i])
	}
	switch min(sums[0], sums[1], sums[2]) {
	case sums[1]:
		return append(append(dst, up), f.up...)
	case sums[0]:
		return append(append(dst, sub), f.sub...)
	}
	return append(append(dst, paeth), f.paeth...)
}

// size is how far a difference, counted round from 255 to 0, is from none.
func size(d byte) int { return max(int(int8(d)), -int(int8(d))) }

// expected is Paeth's guess at a pixel from those around it.
func expected(left, above, corner byte) byte {
	a, b, c := int(left), int(above), int(corner)
	pa, pb := max(b-c, c-b), max(a-c, c-a)
	pc := max(a+b-2*c, 2*c-a-b)
	switch {
	case pa <= pb && pa <= pc:
		return left
	case pb <= pc:
		return above
	}
	return corner
}
