package dxf_test

import (
	"strings"
	"testing"

	"cowl/mesh/paper"
	"cowl/mesh/read/dxf"
	"cowl/mesh/read/outline"
	"cowl/mesh/read/outline/outlinetest"
)

// Whatever the file holds, Read returns an error or pieces that can be cut.
func FuzzRead(f *testing.F) {
	outlinetest.Fuzz(f, []string{
		"0\nSECTION\n2\nENTITIES\n0\nPOLYLINE\n8\n1\n66\n1\n70\n1\n0\nVERTEX\n8\n1\n10\n0\n20\n0\n0\nVERTEX\n8\n1\n10\n300\n20\n0\n42\n0.3\n0\nVERTEX\n8\n1\n10\n300\n20\n400\n0\nSEQEND\n0\nLINE\n8\n7\n10\n50\n20\n50\n11\n60\n21\n200\n0\nPOINT\n8\n13\n10\n50\n20\n50\n0\nENDSEC\n0\nEOF\n",
		"0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n4\n0\nENDSEC\n0\nSECTION\n2\nBLOCKS\n0\nBLOCK\n2\nA\n0\nLWPOLYLINE\n8\n14\n70\n1\n10\n0\n20\n0\n42\n1\n10\n200\n20\n0\n10\n200\n20\n200\n0\nENDBLK\n0\nENDSEC\n0\nEOF\n",
		"0\nSECTION\n2\nENTITIES\n0\nLINE\n8\n1\n10\n0\n20\n0\n11\n300\n21\n0\n0\nLINE\n8\n1\n10\n300\n20\n0\n11\n0\n21\n200\n0\nLINE\n8\n1\n10\n0\n20\n200\n11\n0\n21\n0\n0\nTEXT\n8\n1\n1\nUnits: METRIC\n0\nENDSEC\n0\nEOF\n",
	}, func(data string, unit outline.Unit) ([]paper.Piece, error) {
		return dxf.Read(strings.NewReader(data), unit)
	})
}
