package main

import (
	"errors"
	"fmt"
	"reflect"
	"strings"

	"cowl/materials"
	"cowl/mesh/limit"
)

// labCloth chooses the cloth of a test: a fabric, or its values.
type labCloth struct {
	Fabric     string `short:"f" xor:"cloth" placeholder:"NAME" help:"Fabric of the library, see cowl fabrics."`
	FabricFile string `xor:"cloth" placeholder:"FILE" help:"Fabric file in YAML."`

	Values any `embed:"" table:"values"`
}

// valueFields are the values of a cloth by their flags.
var valueFields = map[string]materials.Field{
	"weight": materials.Weight, "bend": materials.BendWarp, "bend-weft": materials.BendWeft, "bend-bias": materials.BendBias,
	"bend-friction": materials.BendFriction, "bend-softening": materials.BendSoftening, "pull-warp": materials.PullWarp, "pull-weft": materials.PullWeft,
	"shear": materials.Shear, "shear-friction": materials.ShearFriction, "shear-lock": materials.ShearLock,
}

// valueRows are their flags.
func valueRows() []flagRow {
	rows := []flagRow{
		{name: "weight", holder: "W", help: "Weight, 150gsm."},
		{name: "bend", holder: "B", help: "Bending rigidity along the warp, 10uNm."},
		{name: "bend-weft", holder: "B", help: "Along the weft; without it as along the warp."},
		{name: "bend-bias", holder: "B", help: "At 45°; without it by the rule of Peirce and Cooper from warp and weft."},
		{name: "bend-friction", holder: "M", help: "Friction of bending, half of the KES 2HB, 0.3mN; without it none."},
		{name: "bend-softening", holder: "LEN", help: "Softening of bending, −B1/B0 of a measured M = B0·κ + B1·κ², 2.7mm; without it none."},
		{name: "pull-warp", holder: "C", help: "Stiffness along the warp (2000N/m)."},
		{name: "pull-weft", holder: "C", help: "Along the weft (2000N/m)."},
		{name: "shear", holder: "G", help: "Shear rigidity (30N/m)."},
		{name: "shear-friction", holder: "F", help: "Friction of shear, half of the KES 2HG, 0.3N/m; without it none."},
		{name: "shear-lock", holder: "DEG", help: "Shear angle from which the yarns jam, 40; without it never."},
	}
	for i := range rows {
		rows[i].group, rows[i].of, rows[i].reader = "Values instead of a fabric: weight and bend are a must", reflect.TypeFor[*float64](), "value"
	}
	return rows
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
	case !isGiven(f.Values, "weight") || !isGiven(f.Values, "bend"):
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
	var b strings.Builder
	write := func(q materials.Field, v float64) {
		var cloth materials.Fabric
		*q.In(&cloth) = v
		fmt.Fprintf(&b, "%s: %.12g\n", q.Key(), q.InUnits(cloth))
	}
	for name, v := range given(f.Values) {
		write(valueFields[name], v.Float())
		if name == "bend" && !isGiven(f.Values, "bend-weft") {
			write(materials.BendWeft, v.Float())
		}
	}
	return b.String()
}
