package labs

import (
	"errors"
	"fmt"
	"reflect"
	"strings"

	"cowl/cmd/cowl/internal/flags"
	"cowl/materials"
	"cowl/mesh/limit"
)

// clothFlags choose the cloth of a test: a fabric, or its values.
type clothFlags struct {
	Fabric     string `short:"f" xor:"cloth" placeholder:"NAME" help:"Fabric of the library, see cowl fabrics."`
	FabricFile string `xor:"cloth" placeholder:"FILE" help:"Fabric file in YAML."`

	Values any `embed:"" table:"values"`
}

// valueFields are the values of a cloth by their flags.
var valueFields = map[string]materials.Field{
	"weight": materials.Weight, "bend": materials.BendWarp, "bend-weft": materials.BendWeft,
	"bend-bias":     materials.BendBias,
	"bend-friction": materials.BendFriction, "bend-softening": materials.BendSoftening, "pull-warp": materials.TensileWarp,
	"pull-weft": materials.TensileWeft,
	"shear":     materials.Shear, "shear-friction": materials.ShearFriction, "shear-lock": materials.ShearLock,
}

// Values is the table of flags that give the values of a cloth, for flags.NewParser under
// the name "values".
func Values() flags.Table {
	rows := []flags.Row{
		{Name: "weight", Holder: "W", Help: "Weight, 150gsm."},
		{Name: "bend", Holder: "B", Help: "Bending rigidity along the warp, 10uNm."},
		{Name: "bend-weft", Holder: "B", Help: "Along the weft; without it as along the warp."},
		{Name: "bend-bias", Holder: "B", Help: "At 45°; without it by the rule of Peirce and Cooper from warp and weft."},
		{Name: "bend-friction", Holder: "M", Help: "Friction of bending, half of the KES 2HB, 0.3mN; without it none."},
		{Name: "bend-softening", Holder: "LEN", Help: "Softening of bending, −B1/B0 of a measured M = B0·κ + B1·κ², " +
			"2.7mm; without it none."},
		{Name: "pull-warp", Holder: "C", Help: "Stiffness along the warp (2000N/m)."},
		{Name: "pull-weft", Holder: "C", Help: "Along the weft (2000N/m)."},
		{Name: "shear", Holder: "G", Help: "Shear rigidity (30N/m)."},
		{Name: "shear-friction", Holder: "F", Help: "Friction of shear, half of the KES 2HG, 0.3N/m; without it none."},
		{Name: "shear-lock", Holder: "DEG", Help: "Shear angle from which the yarns jam, 40; without it never."},
	}
	for i := range rows {
		rows[i].Group, rows[i].Of = "Values instead of a fabric: weight and bend are a must", reflect.TypeFor[*float64]()
	}
	return flags.Table{Rows: rows, Read: func(flag, text string) (float64, error) { return valueFields[flag].Parse(text) }}
}

// givenValues is the name of a cloth given by its values.
const givenValues = "values"

// cloth returns the fabric that was asked for; without any, the default of the
// library.
func (f clothFlags) cloth() (materials.Fabric, error) {
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
	case !flags.IsGiven(f.Values, "weight") || !flags.IsGiven(f.Values, "bend"):
		return materials.Fabric{}, errors.New("values of a cloth: want --weight and --bend at least, --weight 150gsm " +
			"--bend 10uNm")
	}
	cloth, err := materials.Parse(givenValues, []byte("name: "+givenValues+"\n"+text))
	if err != nil {
		return cloth, limit.Under("values of the cloth", err)
	}
	return cloth, nil
}

// yaml writes the values as lines of a fabric file, with nothing for what was
// not given.
func (f clothFlags) yaml() string {
	var b strings.Builder
	write := func(q materials.Field, v float64) {
		var cloth materials.Fabric
		*q.In(&cloth) = v
		fmt.Fprintf(&b, "%s: %.12g\n", q.Key(), q.InUnits(cloth))
	}
	for name, v := range flags.Given(f.Values) {
		write(valueFields[name], v.Float())
		if name == "bend" && !flags.IsGiven(f.Values, "bend-weft") {
			write(materials.BendWeft, v.Float())
		}
	}
	return b.String()
}
