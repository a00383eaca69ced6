package limit

import (
	"errors"
	"fmt"
	"io/fs"
	"math"
	"strings"
	"testing"
)

func TestRange(t *testing.T) {
	facing := Range{Field: "facing", Lo: 0.01, Hi: 0.30, Unit: Length, None: true,
		Why: Say("%.0f is usual, 0 for none", Between(0.05, 0.15, Length))}
	for _, q := range []struct {
		r          Range
		v          float64
		want, inch string // empty: allowed
	}{
		{facing, 0.01, "", ""}, {facing, 0, "", ""}, {facing, 0.3000000000001, "", ""},
		{facing, 0.31, "facing 31.0 cm, want 1.0–30.0 cm: 5–15 cm is usual, 0 for none",
			"facing 12.20 in, want 0.39–11.81 in: 1.97–5.91 in is usual, 0 for none"},
		{facing, math.NaN(), "facing NaN cm, want 1.0–30.0 cm: 5–15 cm is usual, 0 for none",
			"facing NaN in, want 0.39–11.81 in: 1.97–5.91 in is usual, 0 for none"},
		{Range{Field: "grain", Lo: -math.Pi / 2, Hi: math.Pi / 2, Unit: Angle}, 2, "grain 114.6°, want -90.0–90.0°: so",
			"grain 114.6°, want -90.0–90.0°: so"},
		{Range{Field: "spacing", Lo: 0.002, Hi: 0.02, Unit: Small}, 0.05, "spacing 50.0 mm, want 2–20 mm: so",
			"spacing 50.0 mm, want 2–20 mm: so"},
		{Range{Field: "slashes", Lo: 1, Hi: 6, Unit: Count}, 0, "slashes 0, want 1–6: so", "slashes 0, want 1–6: so"},
		{Range{Field: "weight", Lo: 0, Hi: 0.05, Unit: Mass}, 0.2, "weight 200.0 g, want 0.0–50.0 g: so",
			"weight 200.0 g, want 0.0–50.0 g: so"},
		{Range{Field: "waist", Lo: math.Inf(-1), Hi: 0.92, Unit: Length}, 0.95, "waist 95.0 cm, want at most 92.0 cm: so",
			"waist 37.40 in, want at most 36.22 in: so"},
		{Range{Field: "apex", Lo: 0.195, Hi: math.Inf(1), Unit: Length}, 0.18, "apex 18.0 cm, want at least 19.5 cm: so",
			"apex 7.09 in, want at least 7.68 in: so"},
		{Range{Field: "bend_uNm", Lo: 5e-8, Hi: 2e-3, Unit: Unit{" µN·m", 1e6, Figures, Figures}}, 3e-3,
			"bend_uNm 3000 µN·m, want 0.05–2000 µN·m: so", "bend_uNm 3000 µN·m, want 0.05–2000 µN·m: so"},
	} {
		q.r.Value = q.v
		if q.r.Why.String() == "" {
			q.r.Why = Say("so")
		}
		err := q.r.Check()
		if q.want == "" {
			if err != nil {
				t.Errorf("%s %g: Check() = %v, want nil", q.r.Field, q.v, err)
			}
			continue
		}
		if err == nil || err.Error() != q.want || In(err, Inches) != q.inch {
			t.Errorf("%s %g: Check() = %v, want %q and in inches %q", q.r.Field, q.v, err, q.want, q.inch)
		}
		var e *Error
		if !errors.As(err, &e) || e.Field != q.r.Field {
			t.Errorf("%s: Check() = %+v, want the field", q.r.Field, e)
		}
	}
}

// A message within a message is read in the same units; each part is placed
// by its own field, once.
func TestPlaced(t *testing.T) {
	inner := Errorf("dart legs", "dart legs %.2f and %.2f at %v", Metres(0.10), Metres(0.2), Point(0.0508, -0.1))
	from := map[string]string{"block": "f:1", "trim": "--trim"}
	at := func(field string) string { return from[field] }
	err := Placed(errors.Join(Errorf("block", "no block: %v", inner),
		errors.Join(Range{Field: "trim", Value: 1, Hi: 0.1, Unit: Length, Why: Say("so")}.Check()),
		fmt.Errorf("%w: %w", errors.ErrUnsupported, fs.ErrNotExist)), at)
	err = Placed(err, func(string) string { return "later" })
	for u, want := range map[Units]string{
		Centimetres: "f:1: no block: dart legs 10.00 cm and 20.00 cm at (5.1, -10.0) cm\n--trim: trim 100.0 cm, want " +
			"0.0–10.0 cm: so\nlater: unsupported operation: file does not exist",
		Inches: "f:1: no block: dart legs 3.94 in and 7.87 in at (2.00, -3.94) in\n--trim: trim 39.37 in, want " +
			"0.00–3.94 in: so\nlater: unsupported operation: file does not exist",
	} {
		if got := In(err, u); got != want {
			t.Errorf("In = %q, want %q", got, want)
		}
	}
	if !errors.Is(err, fs.ErrNotExist) || Placed(nil, at) != nil {
		t.Errorf("Placed lost what it holds, or made an error of nil")
	}
}

// Every text of an error is reworded, also those within others; its field, place and
// lengths stay, and so does what is no Error.
func TestReworded(t *testing.T) {
	plain := errors.New("the front is plain")
	err := errors.Join(
		Errorf("edge depth", "edge %v below the %s: %v: %v", Metres(0.12), "front neck", Say("the front ends"),
			Errorf("", "no front")),
		Under("s.yaml:3", Errorf("lean", "front")), plain)
	back := Reworded(err, func(s string) string { return strings.ReplaceAll(s, "front", "back") })
	if got, want := In(back, Centimetres), "edge 12.0 cm below the back neck: the back ends: no back\ns.yaml:3: "+
		"back\nthe front is plain"; got != want {
		t.Errorf("Reworded = %q, want %q", got, want)
	}
	var e *Error
	if !errors.As(back, &e) || e.Field != "edge depth" || !errors.Is(back, plain) {
		t.Errorf("Reworded: first field %+v, want edge depth, and the plain error kept", e)
	}
	if Reworded(nil, strings.ToUpper) != nil {
		t.Error("Reworded(nil) is an error")
	}
}
