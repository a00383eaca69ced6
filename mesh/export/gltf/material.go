package gltf

import "math"

// Cloth is what cloth looks like. The standard has no weave and no wrong side.
type Cloth struct {
	Colour    [3]float64 // linear, 0 to 1
	Sheen     float64    // 0 matt to 1
	Roughness float64    // 0 to 1, of the highlight
	Sheer     float64    // 0 to 1, share of the light let through
	Float     *float64   // rad, from the centre front to the yarn that floats, towards +X; nil: none does
}

// The extensions of the Khronos Group that a look needs.
const (
	anisotropy   = "KHR_materials_anisotropy"
	sheen        = "KHR_materials_sheen"
	transmission = "KHR_materials_transmission"
)

// drawnOut is the strength of the anisotropy of a highlight that is some three
// times as wide across the float as along it.
const drawnOut = 0.7

// material returns the material of cloth and the extensions it uses. Shiny
// cloth has a smooth surface, drawn out across the float; matt cloth has fuzz.
func (c Cloth) material(name string) (material, []string) {
	m := material{Name: name, DoubleSided: true, Surface: pbr{BaseColor: [4]float64{0.71, 0.66, 0.57, 1}, Roughness: 0.9}}
	if c.Colour == [3]float64{} {
		return m, nil
	}
	m.Surface.BaseColor = [4]float64{c.Colour[0], c.Colour[1], c.Colour[2], 1}
	m.Surface.Roughness = 1 - c.Sheen*(1-c.Roughness)
	m.Extensions = map[string]any{}
	var used []string
	add := func(name string, values map[string]any) {
		m.Extensions[name] = values
		used = append(used, name)
	}
	if c.Float != nil && c.Sheen > 0 {
		add(anisotropy, map[string]any{"anisotropyStrength": drawnOut * c.Sheen, "anisotropyRotation": across(*c.Float)})
	}
	fuzz := 1 - c.Sheen
	add(sheen, map[string]any{
		"sheenColorFactor":     []float64{fuzz * c.Colour[0], fuzz * c.Colour[1], fuzz * c.Colour[2]},
		"sheenRoughnessFactor": max(c.Roughness, 0.3),
	})
	if c.Sheer > 0 {
		add(transmission, map[string]any{"transmissionFactor": c.Sheer})
	}
	return m, used
}

// across returns the turn from the tangent, which is X of the flat piece, to
// the direction across a yarn, counter-clockwise, 0 to π.
func across(yarn float64) float64 {
	turn := math.Mod(-yarn, math.Pi) // the yarn lies at π/2 − yarn, across it is a quarter turn back
	if turn < 0 {
		turn += math.Pi
	}
	return turn
}

var formMaterial = material{Name: "form", Surface: pbr{BaseColor: [4]float64{0.28, 0.28, 0.29, 1}, Roughness: 0.95}}
