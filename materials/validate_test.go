package materials

import (
	"math"
	"strings"
	"testing"
)

func TestValidateReports(t *testing.T) {
	for _, c := range []struct {
		spoil func(*Fabric)
		want  string
	}{
		{func(f *Fabric) { f.Weight = 135 }, "weight_gsm 135000 g/m², want 10–1500 g/m²"},
		{func(f *Fabric) { f.Weight = math.NaN() }, "weight_gsm NaN"},
		{func(f *Fabric) { f.BendWarp = 0 }, "bend_warp_uNm 0 µN·m, want 0.05–2000 µN·m"},
		{func(f *Fabric) { f.BendBias = math.Inf(1) }, "bend_bias_uNm +Inf"},
		{func(f *Fabric) { f.TensileWarp = f.Shear }, "pull_warp_N_per_m"},
		{func(f *Fabric) { f.Friction = -0.1 }, "friction -0.1, want 0–1.5"},
		{func(f *Fabric) { f.FrictionCloth = 1.6 }, "friction_cloth 1.6, want 0–1.5"},
		{func(f *Fabric) { f.Basis[Shear] = Evidence{} }, "shear_N_per_m has no basis"},
		{func(f *Fabric) { f.Basis[Shear].Kind = 9 }, "shear_N_per_m has no basis"},
		{func(f *Fabric) { f.Name = "" }, `name ""`},
		{func(f *Fabric) { f.Drape.Coefficient = 22.3 }, "drape: coefficient_pct 2230 %"},
	} {
		f := Default()
		c.spoil(&f)
		if err := f.Validate(); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("Validate: error %v, want it to say %q", err, c.want)
		}
	}
	if err := Default().Validate(); err != nil {
		t.Errorf("Validate of Default: %v", err)
	}
}

// Everything that is wrong is said at once.
func TestValidateReportsAll(t *testing.T) {
	err := Fabric{}.Validate()
	if err == nil {
		t.Fatal("Validate accepted the zero fabric")
	}
	for _, q := range Fields() {
		if !strings.Contains(err.Error(), q.Key()) {
			t.Errorf("Validate of the zero fabric does not mention %s", q.Key())
		}
	}
}

func TestKind(t *testing.T) {
	for k, want := range map[Kind]string{Unknown: "unknown", Measured: "measured", Memory: "memory", -1: "kind(-1)",
		9: "kind(9)"} {
		if got := k.String(); got != want {
			t.Errorf("Kind(%d) = %q, want %q", int(k), got, want)
		}
	}
}
