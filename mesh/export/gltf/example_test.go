package gltf_test

import (
	"bytes"
	"fmt"

	"cowl/mesh"
	"cowl/mesh/export/gltf"
	"cowl/mesh/surface"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

func ExampleWrite() {
	var out bytes.Buffer
	cloth := mesh.Sheet{
		Flat:   []r2.Vec{{X: 0, Y: 0}, {X: 0.1, Y: 0}, {X: 0, Y: 0.1}},
		Pos:    []r3.Vec{{Y: 1.3}, {X: 0.1, Y: 1.3}, {Y: 1.4}},
		Tris:   [][3]int32{{0, 1, 2}},
		Facing: []bool{false},
	}
	err := gltf.Write(&out, surface.Smooth(cloth, surface.Options{}), nil, gltf.Options{Title: "one triangle"})
	fmt.Printf("%s, %d mod 4 bytes, %v\n", out.Bytes()[:4], out.Len()%4, err)
	// Output: glTF, 0 mod 4 bytes, <nil>
}
