package sim

import (
	"math"
	"reflect"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// A clone is equal in every field and shares none of them.
func TestClone(t *testing.T) {
	v := []r3.Vec{{X: 1}, {Y: 2}}
	st := &State{Pos: v, Vel: v, Target: v, Grip: []float64{3}, Hands: []Hand{{Target: v[0], Grip: 4}},
		Slip: Slip{[]float64{5}, []float64{6}, []float64{7}}}
	c := st.Clone()
	if !reflect.DeepEqual(st, c) {
		t.Fatalf("Clone = %+v, want %+v", c, st)
	}
	slices := 0
	var apart func(a, b reflect.Value)
	apart = func(a, b reflect.Value) {
		for i := range a.NumField() {
			switch f := a.Field(i); f.Kind() {
			case reflect.Struct:
				apart(f, b.Field(i))
			case reflect.Slice:
				slices++
				if f.Len() == 0 || f.Pointer() == b.Field(i).Pointer() {
					t.Errorf("%s is shared or was not filled", a.Type().Field(i).Name)
				}
			}
		}
	}
	apart(reflect.ValueOf(*st), reflect.ValueOf(*c))
	if slices < 8 {
		t.Errorf("%d slices, want 8 or more", slices)
	}
}

// A hand pulls as a hold of the scene does, to the bit, and lets go with it.
func TestHandsAreHolds(t *testing.T) {
	sc, st := ledge(t, 0.1, 0.006)
	pos := r3.Add(st.Pos[0], r3.Vec{Z: 0.01})
	at := sc.Holds[0]
	sc.Holds = append(sc.Holds, at)
	held := st.Clone()
	held.Target, held.Grip = append(held.Target, pos), append(held.Grip, 50)
	other := *sc
	other.Holds = sc.Holds[:len(sc.Holds)-1]
	st.Hands = []Hand{{at, pos, 50}}
	a, b := NewStepper(sc, held), NewStepper(&other, st)
	for range 200 {
		a.Step()
		b.Step()
	}
	for i, p := range held.Pos {
		if q := st.Pos[i]; math.Float64bits(p.X) != math.Float64bits(q.X) || math.Float64bits(p.Z) != math.Float64bits(q.Z) {
			t.Fatalf("node %d lies at %v on a hold and at %v in a hand", i, p, q)
		}
	}
	pulls := 0
	for range st.Pulls(&other) {
		pulls++
	}
	if pulls != len(sc.Holds) {
		t.Errorf("%d pulls, want %d", pulls, len(sc.Holds))
	}
}
