package toile

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

// All toiles of these tests are invented.
const good = `key,date,style,fabric,drop_cm,laid,kept,fold1_depth_cm,fold1_at_cm,fold2_depth_cm,fold2_at_cm,reach_cm,photo,note
25c0a4701572,2026-11-29,toiles/25c0a4701572.yaml,polyester-twill,12.5,2,2,4.5,5,3,15,5.2,p.png,"invented, for a try"
9a5f48890841,2026-11-30,toiles/9a5f48890841.yaml,wool-crepe,,,,4.8,,,,,,
`

// What a book says is read, and what it writes is read again to the same.
func TestRoundTrip(t *testing.T) {
	b, err := parse([]byte(good))
	if err != nil {
		t.Fatal(err)
	}
	want := []Toile{
		{Key: "25c0a4701572", Date: "2026-11-29", Style: "toiles/25c0a4701572.yaml", Fabric: "polyester-twill",
			Photo: "p.png", Note: "invented, for a try",
			Reading: Reading{0.125, 0.052, 2, 2, []Fold{{0.045, 0.05}, {0.03, 0.15}}}},
		{Key: "9a5f48890841", Date: "2026-11-30", Style: "toiles/9a5f48890841.yaml", Fabric: "wool-crepe",
			Reading: Reading{math.NaN(), math.NaN(), math.NaN(), math.NaN(), []Fold{{0.048, math.NaN()}}}},
	}
	if d := cmp.Diff(want, b.Toiles, cmpopts.EquateNaNs()); d != "" {
		t.Errorf("read: %s", d)
	}
	again, err := parse(b.CSV())
	if d := cmp.Diff(b.Toiles, again.Toiles, cmpopts.EquateNaNs()); d != "" || err != nil {
		t.Errorf("written and read again: %v %s", err, d)
	}
	german := strings.ReplaceAll(strings.ReplaceAll(strings.ReplaceAll(good, `"invented, for a try"`,
		"invented for a try"), ",", ";"), ".5;", ",5;")
	if b, err := parse([]byte("\ufeff" + german)); err != nil || b.Toiles[0].Drop != 0.125 ||
		b.Toiles[0].Folds[0].Depth != 0.045 {
		t.Errorf("semicolons and decimal commas: %v, want a drop of 12.5 cm", err)
	}
}

// What is wrong with a book is told with its line, field, value and what to do.
func TestHostileBook(t *testing.T) {
	row := func(old, new string) string { return strings.Replace(good, old, new, 1) }
	n := 0
	for name, q := range map[string]struct{ text, want string }{
		"empty":          {"", "empty file, want a head: key,date"},
		"no text":        {"key\x00", "not UTF-8 text"},
		"latin":          {"key,\xff", "not UTF-8 text"},
		"long line":      {good + strings.Repeat("x", 5000), "a line of 5000 letters"},
		"other column":   {row("reach_cm", "reach_mm"), `column "reach_mm", want key,date`},
		"column twice":   {row("kept", "laid"), "column laid stands twice"},
		"no key":         {row("key,", "note,"), "column note stands twice"},
		"no date":        {"key,style,fabric\n", "no column date"},
		"too many cells": {row("a try\"", "a try\",7"), "line 2: 15 cells under 14 heads"},
		"key":            {row("25c0a4701572,", "../../etc,"), "line 2: key \"../../etc\""},
		"key twice": {strings.ReplaceAll(good, "9a5f48890841", "25c0a4701572"),
			"line 3: key 25c0a4701572 stands in line 2 too"},
		"date": {row("2026-11-29", "29.11.26"), `line 2: date "29.11.26", want year-month-day`},
		"style elsewhere": {row("toiles/25c0a4701572.yaml", "../secret.yaml"),
			`line 2: style "../secret.yaml", want a path within`},
		"style absolute": {row("toiles/25c0a4701572.yaml", "/etc/passwd"),
			`line 2: style "/etc/passwd", want a path within`},
		"no style":        {row("toiles/25c0a4701572.yaml", ""), "line 2: style is empty"},
		"photo elsewhere": {row("p.png", "a/../../p.png"), `line 2: photo "a/../../p.png", want a path within`},
		"windows":         {row("p.png", `..\p.png`), "line 2: photo"},
		"fabric":          {row("polyester-twill", "Wool Crepe"), `line 2: fabric "Wool Crepe"`},
		"formula":         {row(`"invented, for a try"`, "=cmd()"), `line 2: note "=cmd()" begins with`},
		"control":         {row("for a try", "for\x1b[2J"), "want one line of plain text"},
		"long note":       {row("for a try", strings.Repeat("x", 300)), "line 2: note of 310 letters, want at most 200"},
		"word":            {row("12.5", "deep"), `line 2: drop_cm "deep", want a number`},
		"NaN":             {row("12.5", "NaN"), `line 2: drop_cm "NaN", want a number`},
		"infinite":        {row("12.5", "1e999"), `line 2: drop_cm "1e999", want a number`},
		"drop":            {row("12.5", "125"), "line 2: drop 125.0 cm, want -10.0–60.0 cm"},
		"half a fold":     {row(",2,2,", ",2,1.5,"), "line 2: kept 1.5, want a whole number"},
		"more kept":       {row(",2,2,", ",2,3,"), "line 2: kept 3 of laid 2 folds"},
		"kept alone":      {row(",2,2,", ",,2,"), "line 2: kept 2 and laid is not told"},
		"nothing":         {row("4.8", ""), "line 3: nothing is measured"},
		"laid alone":      {row(",,,,4.8", ",,2,,"), "line 3: nothing is measured"},
		"depth":           {row("4.5", "45"), "line 2: depth of fold 1 45.0 cm, want 0.2–25.0 cm"},
		"folds upwards":   {row(",15,", ",4,"), "line 2: fold 2 lies 4.0 cm and the one before it 5.0 cm"},
		"fold missing":    {row("4.5,5,3,15", ",,3,15"), "line 2: fold 1 has neither depth nor place"},
		"quote":           {row(`"invented`, `"inv"ented`), `parse error on line 2`},
		"too many rows":   {manyRows(MostToiles + 1), "more than 2000 toiles"},
	} {
		n++
		if _, err := parse([]byte(q.text)); err == nil || !strings.Contains(err.Error(), q.want) || len(err.Error()) > 600 {
			t.Errorf("%s: %v, want %q, in short", name, err, q.want)
		}
	}
	if n < 30 {
		t.Errorf("%d cases", n)
	}
	large := filepath.Join(t.TempDir(), "large.csv")
	if err := os.WriteFile(large, []byte(strings.Repeat(good, 10000)), 0o644); err != nil {
		t.Fatal(err)
	}
	if _, err := Read(large); err == nil || !strings.Contains(err.Error(), "larger than 1 MB") {
		t.Errorf("a large book: %v", err)
	}
}

// manyRows is a good book of n toiles.
func manyRows(n int) string {
	var b strings.Builder
	b.WriteString("key,date,style,fabric,drop_cm\n")
	for k := range n {
		fmt.Fprintf(&b, "%012x,2026-01-01,s.yaml,twill,12\n", k)
	}
	return b.String()
}

// A book as large as one may be is written no larger than one is read.
func TestFullBook(t *testing.T) {
	b, err := parse([]byte(manyRows(MostToiles)))
	if err != nil || len(b.Toiles) != MostToiles {
		t.Fatalf("%d toiles, %v", len(b.Toiles), err)
	}
	if again, err := parse(b.CSV()); err != nil || len(again.Toiles) != MostToiles {
		t.Errorf("written and read again: %d toiles, %v", len(again.Toiles), err)
	}
}

// Whatever a file holds, it is refused or it is a book that is written and read again to
// the same bytes.
func FuzzBook(f *testing.F) {
	f.Add(good)
	f.Add(strings.ReplaceAll(good, ",", ";"))
	f.Add("key;date;style;fabric;drop_cm\n000000000000;2026-01-01;a b;x;12,5\n")
	f.Add("fold6_at_cm\tkey\tdate\tstyle\tfabric\tfold1_at_cm\n")
	f.Fuzz(func(t *testing.T, text string) {
		b, err := parse([]byte(text))
		if err != nil {
			return
		}
		once := b.CSV()
		again, err := parse(once)
		if err != nil {
			t.Fatalf("%q is read and written as %q, which is not: %v", text, once, err)
		}
		if twice := again.CSV(); string(twice) != string(once) {
			t.Errorf("%q, then %q", once, twice)
		}
	})
}
