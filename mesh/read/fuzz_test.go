package read_test

import (
	"slices"
	"strings"
	"testing"

	"cowl/mesh/read"
)

// Whatever the file holds, Block returns an error or named points.
func FuzzBlock(f *testing.F) {
	blk := block(f, 10)
	line := around(blk)
	f.Add(asSVG(line), uint8(0))
	f.Add(asDXF(line, 1000, ""), uint8(1))
	f.Add(asDXF(append(slices.Clone(line[:2]), line[3:]...), 1000, dartDXF(blk)), uint8(1))
	f.Add("name,x_mm,y_mm\nneck,60,0\n", uint8(2))
	f.Fuzz(func(t *testing.T, data string, kind uint8) {
		name := []string{"b.svg", "b.dxf", "b.csv"}[kind%3]
		points, _, err := read.Block(name, strings.NewReader(data), []string{"", "mm"}[kind/3%2], "")
		if err == nil && len(points) == 0 && name != "b.csv" {
			t.Error("no points and no error")
		}
	})
}
