package read_test

import (
	"fmt"
	"math"
	"runtime"
	"strings"
	"syscall"
	"testing"
	"time"

	"cowl/mesh/read"
	"cowl/mesh/read/outline"
)

const (
	head = "0\nSECTION\n2\nENTITIES\n"
	tail = "0\nENDSEC\n0\nEOF\n"
	page = `<svg xmlns="http://www.w3.org/2000/svg" width="1000mm" height="1000mm" viewBox="0 0 1000 1000">`
)

// zigzag is an outline of n corners that does not cross itself, as x y pairs
// in mm put in a format.
func zigzag(n int, format string) string {
	var b strings.Builder
	for i := range n {
		r := 300 + 100*float64(i%2)
		a := 2 * math.Pi * float64(i) / float64(n)
		fmt.Fprintf(&b, format, 500+r*math.Cos(a), 500+r*math.Sin(a))
	}
	return b.String()
}

// round is a circle of n points.
func round(n int, format string) string {
	var b strings.Builder
	for i := range n {
		a := 2 * math.Pi * float64(i) / float64(n)
		fmt.Fprintf(&b, format, 500+300*math.Cos(a), 500+300*math.Sin(a))
	}
	return b.String()
}

// manyPieces is a table of n circles, each with its cut line on the seam line.
func manyPieces(n int) string {
	b := "piece,line,x_mm,y_mm\n"
	for i := range n {
		b += round(3000, fmt.Sprintf("P%d,seam,%%.3f,%%.3f\n", i))
	}
	return b
}

// manyBlocks is a drawing of n circles.
func manyBlocks(n int, vertex string) string {
	b := "0\nSECTION\n2\nBLOCKS\n"
	for i := range n {
		b += fmt.Sprintf("0\nBLOCK\n2\nB%d\n0\nPOLYLINE\n8\n1\n70\n1\n", i) + round(3000, vertex) + "0\nSEQEND\n0\nENDBLK\n"
	}
	return b + tail
}

// path is an outline of n corners as a path.
func path(n int) string { return `<path d="M` + zigzag(n, "%.3f %.3f ") + `Z"/>` }

// fill repeats s up to the largest file that is read.
func fill(s string) string { return strings.Repeat(s, (outline.MostBytes-1000)/len(s)) }

// Wrong and hostile files are refused with a reason, in under a second and
// 100 MB; a large honest one is read within the same bounds.
func TestHostile(t *testing.T) {
	vertex := "0\nVERTEX\n8\n1\n10\n%.3f\n20\n%.3f\n"
	poly := func(flag, body string) string {
		return head + "0\nPOLYLINE\n8\n1\n66\n1\n70\n" + flag + "\n" + body + "0\nSEQEND\n" + tail
	}
	for _, q := range []struct{ what, name, data, want string }{
		{"too large", "a.dxf", strings.Repeat("0\nA\n", outline.MostBytes/4+1), "larger than 8 MB"},
		{"too large", "a.svg", page + strings.Repeat(" ", outline.MostBytes), "larger than 8 MB"},
		{"too large", "a.csv", strings.Repeat("a", outline.MostBytes+1), "larger than 8 MB"},
		{"full of unknown entities", "a.dxf", head + fill("0\nA\n"), "more than 300000 entities"},
		{"full of points", "a.dxf", head + fill("0\nPOINT\n8\n1\n10\n1\n20\n1\n"), "more than 50000 points"},
		{"full of blocks", "a.dxf", "0\nSECTION\n2\nBLOCKS\n" + numbered(20000, "0\nBLOCK\n2\nB%d\n0\nENDBLK\n"),
			"more than 200 blocks"},
		{"one endless entity", "a.dxf", head + "0\nLWPOLYLINE\n8\n1\n" + fill("10\n1\n"), "groups"},
		{"vertices without end", "a.dxf", head + "0\nPOLYLINE\n8\n1\n70\n1\n" + fill("0\nVERTEX\n10\n1\n20\n2\n"),
			"more than 50000 points"},
		{"cut off", "a.dxf", head + "0\nPOLYLINE\n8\n1\n70\n1\n0\nVERTEX\n10", "cut off"},
		{"not finite", "a.dxf", poly("1", "0\nVERTEX\n10\nNaN\n20\n2\n0\nVERTEX\n10\n1\n20\n2\n0\nVERTEX\n10\n1\n20\n5\n"),
			"finite"},
		{"infinite", "a.dxf", poly("1", "0\nVERTEX\n10\n1e999\n20\n2\n"), "want a number"},
		{"open", "a.dxf", poly("0", zigzag(50, vertex)), "open"},
		{"open by a gap", "a.dxf", head +
			"0\nLINE\n8\n1\n10\n0\n20\n0\n11\n300\n21\n0\n0\nLINE\n8\n1\n10\n300\n20\n0\n11\n300\n21\n200\n" + tail,
			"360.6 mm are missing"},
		{"crosses itself", "a.dxf", poly("1", "0\nVERTEX\n8\n1\n10\n0\n20\n0\n"+
			"0\nVERTEX\n8\n1\n10\n300\n20\n300\n0\nVERTEX\n8\n1\n10\n300\n20\n0\n0\nVERTEX\n8\n1\n10\n0\n20\n350\n"),
			"crosses itself near"},
		{"too fine", "a.dxf", poly("1", zigzag(4000, vertex)), "at most 3000"},
		{"text", "a.dxf", "This is not a drawing.\nNot at all.\n", "group code"},
		{"empty", "a.dxf", "", "empty file"},
		{"binary", "a.dxf", "\x00\x01\x02", "binary"},
		{"spline", "a.dxf", head + "0\nSPLINE\n8\n1\n" + tail, "want polylines"},
		{"scaled", "a.dxf", head + "0\nINSERT\n2\nA\n41\n2.54\n" + tail, "full size"},
		{"other layers", "a.dxf", strings.ReplaceAll(poly("1", zigzag(50, vertex)), "8\n1\n", "8\nouter\n"), "outer"},
		{"deeply nested", "a.svg", page + strings.Repeat("<g>", 500000), "within each other"},
		{"many elements", "a.svg", page + fill("<g/>"), "more than 20000 elements"},
		{"an entity bomb", "a.svg", `<!DOCTYPE s [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;">]>` + page +
			`<path d="M 0 0 &b;"/></svg>`, "entity"},
		{"a path without end", "a.svg", page + `<path d="M0 0 ` + strings.Repeat("L1 1 ", 100000) + `Z"/></svg>`, "points"},
		{"a path too long", "a.svg", page + `<path d="` + strings.Repeat("M0 0", 1<<19) + `"/></svg>`, "letters"},
		{"arcs without end", "a.svg", page + `<path d="M0 0 ` + strings.Repeat("a1 1 0 001 1", 10000) + `"/></svg>`,
			"points"},
		{"not finite", "a.svg", page + `<path d="M0 0 L1e308 1e308 L-1e308 5 Z"/></svg>`, "finite"},
		{"no number", "a.svg", page + `<path d="M0 0 LNaN 5 Z"/></svg>`, "finite number"},
		{"open", "a.svg", page + `<path d="M0 0 L300 0 L300 300"/></svg>`, "no closed line"},
		{"crosses itself", "a.svg", page + `<path d="M0 0L300 300L300 0L0 350Z"/></svg>`, "crosses itself near"},
		{"runs back on itself", "a.svg", page + `<path d="M0 0H300H100V300Z"/></svg>`, "crosses itself near"},
		{"many outlines", "a.svg", page + strings.Repeat(`<path d="M0 0H300V300Z"/>`, 900) + `</svg>`, "900 closed lines"},
		{"too fine", "a.svg", page + path(4000) + `</svg>`, "at most 3000"},
		{"no unit", "a.svg", `<svg width="300" height="300"><path d="M0 0H300V300Z"/></svg>`, "does not say its size"},
		{"another file", "a.svg", "<html></html>", "want svg"},
		{"cut off", "a.svg", page + "<g>", "EOF"},
		{"full of rows", "a.csv", "x_mm,y_mm\n" + fill("1,2\n"), "more than 50000 points"},
		{"an open quote", "a.csv", "x_mm,y_mm\n\"" + fill("1,2\n"), "csv"},
		{"wide", "a.csv", "x_mm,y_mm" + fill(",a"), "letters"},
		{"infinite", "a.csv", "x_mm,y_mm\n0,0\n1e400,2\n3,4\n", "want a number"},
		{"crosses itself", "a.csv", "x_mm,y_mm\n0,0\n300,300\n300,0\n0,350\n", "crosses itself near"},
		{"no columns", "a.csv", "left,top\n1,2\n", "no columns x and y"},
		{"two units", "a.csv", "x_mm,y_in\n1,2\n", "same unit"},
		{"empty", "a.csv", "", "empty file"},
		{"all corners", "a.svg", page + path(3000) + `</svg>`, "3000 corners"},
		{"honest, as fine as can be", "a.dxf", poly("1", round(3000, vertex)), ""},
		{"honest, as fine as can be", "a.svg", page + `<path d="M` + round(3000, "%.3f %.3f ") + `Z"/></svg>`, ""},
		{"honest, as fine as can be", "a.csv", "x_mm,y_mm\n" + round(3000, "%.3f,%.3f\n"), ""},
		{"lines of an old Mac", "a.csv", strings.ReplaceAll("x_mm,y_mm\n"+round(300, "%.3f,%.3f\n"), "\n", "\r"), ""},
		{"lines of an old Mac", "a.dxf", strings.ReplaceAll(poly("1", round(300, vertex)), "\n", "\r"), ""},
		{"lines of an old Mac", "a.svg", page + "\r" + `<path d="M` + round(300, "%.3f %.3f\r") + `Z"/></svg>`, ""},
		{"honest, many pieces", "a.csv", manyPieces(16), ""},
		{"honest, many blocks", "a.dxf", manyBlocks(16, vertex), ""},
	} {
		unit := ""
		if strings.HasSuffix(q.name, ".dxf") {
			unit = "mm"
		}
		took, more, err := cost(func() error {
			_, err := read.Pieces(q.name, strings.NewReader(q.data), unit)
			if _, _, e := read.Front(q.name, strings.NewReader(q.data), unit, ""); e == nil && err != nil {
				t.Errorf("%s (%s): Front reads it, Pieces says %v", q.what, q.name, err)
			}
			return err
		})
		switch {
		case q.want == "" && err != nil:
			t.Errorf("%s (%s): %v, want it read", q.what, q.name, err)
		case q.want != "" && (err == nil || !strings.Contains(err.Error(), q.want)):
			t.Errorf("%s (%s): %.300v, want %q", q.what, q.name, err, q.want)
		case err != nil && len(err.Error()) > 400:
			t.Errorf("%s (%s): message of %d letters, want it short", q.what, q.name, len(err.Error()))
		}
		if took > slower*time.Second {
			t.Errorf("%s (%s): took %v of processor time, want under 1 s", q.what, q.name, took)
		}
		if more > slower*100<<20 {
			t.Errorf("%s (%s): took %d MB, want under 100 MB", q.what, q.name, more>>20)
		}
		t.Logf("%-26s %s %8v %4d MB: %.90v", q.what, q.name, took.Round(time.Millisecond), more>>20, err)
	}
}

// cost runs f and returns the processor time of this process (a clock on the
// wall would blame a busy machine on the reader) and by how much its memory
// grew.
func cost(f func() error) (took time.Duration, more int64, err error) {
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	start := processorTime()
	err = f()
	took = processorTime() - start
	runtime.ReadMemStats(&after)
	return took, int64(after.Sys) - int64(before.Sys), err
}

// processorTime returns what this process has used of all processors.
func processorTime() time.Duration {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		panic("read: " + err.Error())
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}

func numbered(n int, format string) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, format, i)
	}
	return b.String()
}
