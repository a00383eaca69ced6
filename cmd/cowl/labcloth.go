package main

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"cowl/materials"
	"cowl/mesh/limit"
)

// labCloth chooses the cloth of a test: a fabric, or its values.
type labCloth struct {
	Fabric     string `short:"f" xor:"cloth" placeholder:"NAME" help:"Fabric of the library, see cowl fabrics."`
	FabricFile string `xor:"cloth" placeholder:"FILE" help:"Fabric file in YAML."`

	Weight        *massFlag  `group:"Values instead of a fabric: weight and bend are a must" placeholder:"W" help:"Weight, 150gsm."`
	Bend          *bendFlag  `group:"Values instead of a fabric: weight and bend are a must" placeholder:"B" help:"Bending rigidity along the warp, 10uNm."`
	BendWeft      *bendFlag  `group:"Values instead of a fabric: weight and bend are a must" placeholder:"B" help:"Along the weft; without it as along the warp."`
	BendBias      *bendFlag  `group:"Values instead of a fabric: weight and bend are a must" placeholder:"B" help:"At 45°; without it by the rule of Peirce and Cooper from warp and weft."`
	BendFriction  *rubFlag   `group:"Values instead of a fabric: weight and bend are a must" placeholder:"M" help:"Friction of bending, half of the KES 2HB, 0.3mN; without it none."`
	BendSoftening *cloth     `group:"Values instead of a fabric: weight and bend are a must" placeholder:"LEN" help:"Softening of bending, −B1/B0 of a measured M = B0·κ + B1·κ², 2.7mm; without it none."`
	PullWarp      *pullFlag  `group:"Values instead of a fabric: weight and bend are a must" placeholder:"C" help:"Stiffness along the warp (2000N/m)."`
	PullWeft      *pullFlag  `group:"Values instead of a fabric: weight and bend are a must" placeholder:"C" help:"Along the weft (2000N/m)."`
	Shear         *shearFlag `group:"Values instead of a fabric: weight and bend are a must" placeholder:"G" help:"Shear rigidity (30N/m)."`
	ShearFriction *pullFlag  `group:"Values instead of a fabric: weight and bend are a must" placeholder:"F" help:"Friction of shear, half of the KES 2HG, 0.3N/m; without it none."`
	ShearLock     *degrees   `group:"Values instead of a fabric: weight and bend are a must" placeholder:"DEG" help:"Shear angle from which the yarns jam, 40; without it never."`
}

// values is the name of a cloth given by its values.
const values = "values"

// cloth returns the fabric that was asked for; without any, the default of the
// library.
func (f labCloth) cloth() (materials.Fabric, error) {
	text := f.yaml()
	switch {
	case text != "" && (f.Fabric != "" || f.FabricFile != ""):
		return materials.Fabric{}, errors.New("--fabric and values: want a fabric or values (--weight, --bend …), not both")
	case f.Fabric != "":
		return materials.Find(f.Fabric)
	case f.FabricFile != "":
		return materials.FromFile(f.FabricFile)
	case text == "":
		return materials.Default(), nil
	case f.Weight == nil || f.Bend == nil:
		return materials.Fabric{}, errors.New("values of a cloth: want --weight and --bend at least, --weight 150gsm --bend 10uNm")
	}
	cloth, err := materials.Parse(values, []byte("name: "+values+"\n"+text))
	if err != nil {
		return cloth, limit.Under("values of the cloth", err)
	}
	return cloth, nil
}

// yaml writes the values as lines of a fabric file, with nothing for what was
// not given.
func (f labCloth) yaml() string {
	weft := f.BendWeft
	if weft == nil {
		weft = f.Bend
	}
	var b strings.Builder
	for _, v := range []struct {
		field materials.Field
		value *float64
		scale float64 // SI value of the unit of the key
	}{
		{materials.Weight, number(f.Weight), 1e-3},
		{materials.BendWarp, number(f.Bend), 1e-6}, {materials.BendWeft, number(weft), 1e-6}, {materials.BendBias, number(f.BendBias), 1e-6},
		{materials.BendFriction, number(f.BendFriction), 1e-3}, {materials.BendSoftening, number(f.BendSoftening), 1e-3},
		{materials.PullWarp, number(f.PullWarp), 1}, {materials.PullWeft, number(f.PullWeft), 1},
		{materials.Shear, number(f.Shear), 1}, {materials.ShearFriction, number(f.ShearFriction), 1}, {materials.ShearLock, number(f.ShearLock), math.Pi / 180},
	} {
		if v.value != nil {
			fmt.Fprintf(&b, "%s: %.12g\n", v.field.Key(), *v.value/v.scale)
		}
	}
	return b.String()
}
