package fold

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

// millimetres of flat cloth down CF, to be read at a glance.
func mm(at ...float64) []float64 {
	out := make([]float64, len(at))
	for i, v := range at {
		out[i] = v / 1000
	}
	return out
}

func TestTrack(t *testing.T) {
	const tol = 1e-12
	for _, tt := range []struct {
		name  string
		laid  []float64   // mm
		looks [][]float64 // mm
		crest []int       // of the last look, per laid fold
		lost  []bool
		rode  []float64 // mm
		extra []int
	}{
		{"no folds", nil, [][]float64{{50}}, nil, nil, nil, []int{0}},
		{"no look", []float64{60, 140}, nil, []int{-1, -1}, []bool{false, false}, []float64{0, 0}, nil},
		{"both stay", []float64{60, 140}, [][]float64{{60, 140}, {60, 140}},
			[]int{0, 1}, []bool{false, false}, []float64{0, 0}, nil},
		{"ride far, little by little", []float64{60, 140}, [][]float64{{70, 145}, {80, 150}, {92, 158}, {104, 165}},
			[]int{0, 1}, []bool{false, false}, []float64{44, 25}, nil},
		{"ride past where the next was laid", []float64{60, 100}, [][]float64{{72, 112}, {84, 124}, {96, 136}, {105, 148}},
			[]int{0, 1}, []bool{false, false}, []float64{45, 48}, nil},
		{"jump too far", []float64{60}, [][]float64{{60}, {76}, {76}},
			[]int{-1}, []bool{true}, []float64{0}, []int{0}},
		{"two run into one, nearer the lower", []float64{60, 100}, [][]float64{{70, 92}, {78, 88}, {84}, {84}},
			[]int{-1, 0}, []bool{true, false}, []float64{18, -16}, nil},
		{"birth between two", []float64{60, 100}, [][]float64{{60, 100}, {58, 80, 103}},
			[]int{0, 2}, []bool{false, false}, []float64{-2, 3}, []int{1}},
		{"birth beside one that stays", []float64{60, 100}, [][]float64{{60, 100}, {52, 61, 100}},
			[]int{1, 2}, []bool{false, false}, []float64{1, 0}, []int{0}},
		{"births above and below", []float64{100}, [][]float64{{20, 101, 250}},
			[]int{1}, []bool{false}, []float64{1}, []int{0, 2}},
		{"blink", []float64{60, 140}, [][]float64{{60, 140}, {140}, {63, 140}},
			[]int{0, 1}, []bool{false, false}, []float64{3, 0}, nil},
		{"unseen in the last look", []float64{60, 140}, [][]float64{{60, 140}, {140}},
			[]int{-1, 0}, []bool{false, false}, []float64{0, 0}, nil},
		{"two looks unseen, and another comes", []float64{60, 140}, [][]float64{{60, 140}, {140}, {140}, {60, 140}},
			[]int{-1, 1}, []bool{true, false}, []float64{0, 0}, []int{0}},
		{"three blinks", []float64{60}, [][]float64{{60}, {}, {61}, {}, {62}, {}, {63}},
			[]int{0}, []bool{false}, []float64{3}, nil},
		{"never laid well", []float64{60, 140}, [][]float64{{95, 140}, {95, 140}},
			[]int{-1, 1}, []bool{true, false}, []float64{0, 0}, []int{0}},
		// The upper has moved nearer to where the lower was, and the lower to
		// where the upper was beyond it: each still goes by its order.
		{"no changing places", []float64{100, 110}, [][]float64{{108, 121}, {109, 110}},
			[]int{0, 1}, []bool{false, false}, []float64{9, 0}, nil},
		{"the middle one goes", []float64{60, 75, 90}, [][]float64{{60, 75, 90}, {62, 88}, {63, 87}},
			[]int{0, -1, 1}, []bool{false, true, false}, []float64{3, 0, -3}, nil},
	} {
		track := trackOf(mm(tt.laid...))
		for _, l := range tt.looks {
			track = track.Look(mm(l...))
		}
		var crest []int
		var lost []bool
		var rode []float64
		for i, l := range track.Folds {
			crest, lost, rode = append(crest, l.Crest), append(lost, l.Lost()), append(rode, (l.CF-l.From)*1000)
			if l.Kept() != (l.Crest >= 0) || l.From != tt.laid[i]/1000 {
				t.Errorf("%s: fold %d: %+v, kept %v", tt.name, i, l, l.Kept())
			}
		}
		for _, c := range []struct {
			what      string
			got, want any
		}{{"crests", crest, tt.crest}, {"lost", lost, tt.lost}, {"rode", rode, tt.rode}, {"extra", track.Extra, tt.extra}} {
			if d := cmp.Diff(c.want, c.got, cmpopts.EquateEmpty(), cmpopts.EquateApprox(0, 1000*tol)); d != "" {
				t.Errorf("%s: %s −want +got:\n%s", tt.name, c.what, d)
			}
		}
	}
}

// Look leaves the track it is called on alone, so that a moment can keep it.
func TestTrackIsAValue(t *testing.T) {
	first := trackOf(mm(60, 140)).Look(mm(61, 139, 200))
	want := first.Look(mm(62, 138, 200))
	first.Look(mm(90))
	if d := cmp.Diff(want, first.Look(mm(62, 138, 200))); d != "" {
		t.Errorf("Look after another Look on the same track −want +got:\n%s", d)
	}
}

func TestTrackOrder(t *testing.T) {
	for name, call := range map[string]func(){
		"trackOf": func() { trackOf(mm(140, 60)) },
		"Look":    func() { trackOf(mm(60)).Look(mm(60, 60)) },
	} {
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("%s out of order: no panic, want one", name)
				}
			}()
			call()
		}()
	}
}

func TestTrackPressed(t *testing.T) {
	for _, tt := range []struct {
		name             string
		fingers, valleys []float64 // mm
		crests           []float64 // mm
		from             []float64 // mm
		lost             []bool
	}{
		{"under the fingers", mm(60, 140), mm(100, 180), mm(55, 133, 220), mm(55, 133), []bool{false, false}},
		{"second is not there", mm(60, 140), mm(100, 180), mm(55, 190), mm(55, 140), []bool{false, true}},
		{"one crest for two fingers", mm(60, 120), mm(90, 150), mm(85), mm(85, 120), []bool{false, true}},
		{"tipped over its finger", mm(34, 98, 170), mm(66, 134, 206), mm(52, 98, 170), mm(52, 98, 170),
			[]bool{false, false, false}},
		{"over its valley", mm(34, 98), mm(66, 134), mm(70, 98), mm(34, 98), []bool{true, false}},
		{"two between its valleys", mm(60), mm(120), mm(20, 70), mm(70), []bool{false}},
		{"none", mm(60), mm(120), nil, mm(60), []bool{true}},
	} {
		got := TrackPressed(tt.fingers, tt.valleys, tt.crests)
		for i, l := range got.Folds {
			if !near(l.From, tt.from[i], 1e-12) || l.Lost() != tt.lost[i] {
				t.Errorf("%s: TrackPressed(%v, %v, %v): fold %d laid at %g, lost %v; want %g, %v", tt.name, tt.fingers, tt.valleys,
					tt.crests, i+1, l.From, l.Lost(), tt.from[i], tt.lost[i])
			}
		}
	}
}

// trackOf starts to follow the folds laid at these flat distances from the
// edge, m, in ascending order. Until the first look none is kept.
func trackOf(laid []float64) Track {
	mustAscend(laid)
	t := Track{Folds: make([]Laid, len(laid))}
	for i, s := range laid {
		t.Folds[i] = Laid{From: s, CF: s, Crest: -1}
	}
	return t
}
