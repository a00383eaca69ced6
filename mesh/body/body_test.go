package body

import (
	"fmt"
	"math"
	"strings"
	"testing"
)

func ExampleFromChart() {
	b, err := FromChart(12)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("bust %.0f cm, waist %.0f cm, apex %.1f cm down\n", b.Bust*100, b.Waist*100, b.ApexDepth*100)
	// Output: bust 92 cm, waist 76 cm, apex 25.9 cm down
}

// Rows of W. Aldrich, Metric Pattern Cutting for Women's Wear, 6th ed.,
// standard size chart (as reproduced on the web), cm.
func TestChart(t *testing.T) {
	rows := []struct {
		name string
		of   func(Body) float64
		want [7]float64
	}{
		{"bust", func(b Body) float64 { return b.Bust }, [7]float64{80, 84, 88, 92, 96, 100, 104}},
		{"waist", func(b Body) float64 { return b.Waist }, [7]float64{64, 68, 72, 76, 80, 84, 88}},
		{"hips", func(b Body) float64 { return b.Hip }, [7]float64{88, 92, 96, 100, 104, 108, 112}},
		{"back width", func(b Body) float64 { return b.BackWidth }, [7]float64{32.4, 33.4, 34.4, 35.4, 36.4, 37.4, 38.4}},
		{"across front", func(b Body) float64 { return b.AcrossFront }, [7]float64{30, 31.2, 32.4, 33.6, 34.8, 36, 37.2}},
		{"shoulder", func(b Body) float64 { return b.Shoulder }, [7]float64{11.75, 12, 12.25, 12.5, 12.75, 13, 13.25}},
		{"neck", func(b Body) float64 { return b.Neck }, [7]float64{35, 36, 37, 38, 39, 40, 41}},
		{"dart", func(b Body) float64 { return b.BustDart }, [7]float64{5.8, 6.4, 7, 7.6, 8.2, 8.8, 9.4}},
	}
	sizes := Sizes()
	if len(sizes) != 7 {
		t.Fatalf("Sizes() = %v, want 7 sizes", sizes)
	}
	for i, n := range sizes {
		b, err := FromChart(n)
		if err != nil {
			t.Fatalf("FromChart(%d): %v", n, err)
		}
		if err := b.Validate(); err != nil {
			t.Errorf("FromChart(%d).Validate() = %v", n, err)
		}
		for _, r := range rows {
			if got := r.of(b) * 100; math.Abs(got-r.want[i]) > 1e-9 {
				t.Errorf("FromChart(%d): %s %.3f cm, want %.3f", n, r.name, got, r.want[i])
			}
		}
	}
}

func TestChartUnknownSize(t *testing.T) {
	for _, n := range []int{-10, 0, 5, 11, 20} {
		if _, err := FromChart(n); err == nil || !strings.Contains(err.Error(), "6–18") {
			t.Errorf("FromChart(%d) error = %v, want one that names 6–18", n, err)
		}
	}
}

func TestValidate(t *testing.T) {
	for _, q := range []struct {
		name   string
		change func(*Body)
		want   []string // parts of the message; none: valid
	}{
		{"chart", func(*Body) {}, nil},
		{"left to the draft", func(b *Body) { b.BustSpan, b.ApexDepth, b.ShoulderSlope = 0, 0, 0 }, nil},
		{"inches", func(b *Body) { b.Bust = 0.35 }, []string{"bust 35.0 cm", "60.0–160.0 cm", "full girth"}},
		{"not a number", func(b *Body) { b.Neck = math.NaN() }, []string{"neck NaN cm"}},
		{"infinite", func(b *Body) { b.Hip = math.Inf(1) }, []string{"hip +Inf cm"}},
		{"two at once", func(b *Body) { b.Waist, b.Shoulder = 0.36, 1.2 }, []string{"waist 36.0 cm",
			"shoulder 120.0 cm, want 9.0–17.0 cm"}},
		{"steep", func(b *Body) { b.ShoulderSlope = 0.6 }, []string{"shoulder slope 34.4°", "15.0–26.0°"}},
		{"waist over bust", func(b *Body) { b.Waist = 0.95 }, []string{"waist 95.0 cm, want at most 92.0 cm"}},
		{"no armhole", func(b *Body) { b.BackWidth, b.AcrossFront = 0.45, 0.45 }, []string{"armhole"}},
		{"apex in armhole", func(b *Body) { b.ApexDepth = 0.18 }, []string{"apex depth 18.0 cm, want at least 19.5 cm"}},
		{"short back", func(b *Body) { b.NapeToWaist, b.ArmscyeDepth = 0.32, 0.28 }, []string{"side seam"}},
	} {
		b, err := FromChart(10)
		if err != nil {
			t.Fatal(err)
		}
		q.change(&b)
		err = b.Validate()
		if (err == nil) != (q.want == nil) {
			t.Errorf("%s: Validate() = %v, want error %t", q.name, err, q.want != nil)
			continue
		}
		for _, part := range q.want {
			if !strings.Contains(err.Error(), part) {
				t.Errorf("%s: Validate() = %q, want it to say %q", q.name, err, part)
			}
		}
	}
}

// The apex of the worked example of the draft, size 10: 9.85 cm from CF and
// 25.5 cm below the neck point.
func TestFilledApex(t *testing.T) {
	b, err := FromChart(10)
	if err != nil {
		t.Fatal(err)
	}
	b.BustSpan, b.ApexDepth, b.ShoulderSlope = 0, 0, 0
	f := b.Filled()
	if math.Abs(f.BustSpan-0.197) > 1e-9 || math.Abs(f.ApexDepth-0.255) > 1e-9 ||
		math.Abs(f.ShoulderSlope-20*math.Pi/180) > 1e-12 {
		t.Errorf("Filled() = span %.4f, apex %.4f, slope %.4f, want 0.1970, 0.2550, 0.3491", f.BustSpan, f.ApexDepth,
			f.ShoulderSlope)
	}
}
