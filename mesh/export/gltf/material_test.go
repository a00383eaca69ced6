package gltf

import (
	"bytes"
	"encoding/binary"
	"encoding/json"
	"math"
	"reflect"
	"slices"
	"testing"
)

// jsonOf returns the JSON chunk of a GLB.
func jsonOf(t *testing.T, glb []byte) (doc struct {
	ExtensionsUsed []string
	Materials      []struct {
		Name       string
		Pbr        struct{ BaseColorFactor [4]float64 } `json:"pbrMetallicRoughness"`
		Extensions map[string]map[string]any
	}
}) {
	t.Helper()
	n := binary.LittleEndian.Uint32(glb[12:])
	if err := json.Unmarshal(glb[20:20+n], &doc); err != nil {
		t.Fatal(err)
	}
	return doc
}

func TestLookOfCloth(t *testing.T) {
	warp := math.Pi / 4
	pink := [3]float64{0.8, 0.5, 0.5}
	for _, c := range []struct {
		name  string
		cloth Cloth
		want  []string
	}{
		{"toile", Cloth{}, nil},
		{"satin", Cloth{Colour: pink, Sheen: 1, Roughness: 0.3, Float: &warp}, []string{anisotropy, sheen}},
		{"chiffon", Cloth{Colour: pink, Sheen: 0.1, Roughness: 0.5, Sheer: 0.55}, []string{sheen, transmission}},
		{"wool", Cloth{Colour: pink, Roughness: 1}, []string{sheen}},
	} {
		var out bytes.Buffer
		if err := Write(&out, facets(wave(4)), nil, Options{Cloth: c.cloth}); err != nil {
			t.Fatal(err)
		}
		doc := jsonOf(t, out.Bytes())
		var got []string
		for name := range doc.Materials[0].Extensions {
			got = append(got, name)
		}
		slices.Sort(got)
		if !slices.Equal(doc.ExtensionsUsed, c.want) || !slices.Equal(got, c.want) {
			t.Errorf("%s uses %v and has %v, want %v", c.name, doc.ExtensionsUsed, got, c.want)
		}
		if c.cloth.Colour != [3]float64{} && !reflect.DeepEqual(doc.Materials[0].Pbr.BaseColorFactor,
			[4]float64{0.8, 0.5, 0.5, 1}) {
			t.Errorf("%s has the colour %v, want %v", c.name, doc.Materials[0].Pbr.BaseColorFactor, pink)
		}
	}
}

// A warp along the centre front has its highlight drawn out along X; one at 45°
// towards +X along the other bias, from upper left to lower right.
func TestAcross(t *testing.T) {
	for _, c := range []struct{ yarn, want float64 }{{0, 0}, {math.Pi / 4, 3 * math.Pi / 4}, {math.Pi / 2, math.Pi / 2},
		{-math.Pi / 4, math.Pi / 4}} {
		if got := across(c.yarn); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("across(%.2f) = %.3f, want %.3f", c.yarn, got, c.want)
		}
	}
}
