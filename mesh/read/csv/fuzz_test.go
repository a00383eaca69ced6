package csv_test

import (
	"strings"
	"testing"

	"cowl/mesh/paper"
	"cowl/mesh/read/csv"
	"cowl/mesh/read/outline"
	"cowl/mesh/read/outline/outlinetest"
)

// Whatever the file holds, Read returns an error or pieces that can be cut.
func FuzzRead(f *testing.F) {
	outlinetest.Fuzz(f, []string{
		"x_mm,y_mm\n0,0\n300,0\n300,300\n",
		"piece;line;name;x_cm;y_cm\nA;seam;;0,0;0\nA;seam;;30,5;0\nA;seam;;30;40\n" +
			"A;grain;;1;1\nA;grain;;5;9\nA;inside;dart;2;2\nA;inside;dart;4;4\n",
		"name\tx_in\ty_in\nneck\t2\t3\n",
	}, func(data string, unit outline.Unit) ([]paper.Piece, error) {
		csv.Points(strings.NewReader(data), unit) // must not panic either
		return csv.Read(strings.NewReader(data), unit)
	})
}
