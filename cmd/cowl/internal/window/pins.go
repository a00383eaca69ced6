//go:build cgo

package window

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io/fs"
	"math"
	"strconv"
	"strings"

	"cowl/materials/infile"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// hands is what was put to the cloth by hand, as undo brings it back.
type hands struct {
	own   []pinMark // pins of one's own
	gone  []pinMark // pins of the draft that were taken out
	touch int       // how often the cloth was pulled
}

// pinMark is a pin and where it holds the cloth.
type pinMark struct {
	flat r2.Vec // m
	at   r3.Vec // m
}

// none reports whether no pin was set or taken out.
func (h hands) none() bool { return len(h.own)+len(h.gone) == 0 }

func (h hands) clone() hands {
	h.own = append([]pinMark(nil), h.own...)
	h.gone = append([]pinMark(nil), h.gone...)
	return h
}

// pinsFile is the name of the file of pins beside that of a style.
func pinsFile(styleFile string) string { return strings.TrimSuffix(styleFile, ".yaml") + "-pins.csv" }

// pinColumns head the file of pins: places on the flat piece and in space.
var pinColumns = []string{"pin", "flat_x_mm", "flat_y_mm", "at_x_mm", "at_y_mm", "at_z_mm"}

const pinOwn, pinGone = "own", "taken out"

// csv writes the pins.
func (h hands) csv() []byte {
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	rows := [][]string{pinColumns}
	mm := func(v float64) string { return strconv.FormatFloat(v*1000, 'f', 3, 64) }
	for _, k := range []struct {
		word string
		pins []pinMark
	}{{pinOwn, h.own}, {pinGone, h.gone}} {
		for _, m := range k.pins {
			rows = append(rows, []string{k.word, mm(m.flat.X), mm(m.flat.Y), mm(m.at.X), mm(m.at.Y), mm(m.at.Z)})
		}
	}
	_ = w.WriteAll(rows) // a buffer takes all
	return b.Bytes()
}

// What a file of pins may hold.
const (
	mostPins = 500
	farthest = 3.0 // m, from the origin
	pinBytes = 1 << 17
)

// pinsBeside reads the pins that lie beside the file of a style; none where there are none.
func pinsBeside(styleFile string) (hands, error) {
	path := pinsFile(styleFile)
	data, err := infile.Read(path, "pins in CSV", pinBytes)
	if errors.Is(err, fs.ErrNotExist) {
		return hands{}, nil
	}
	if err != nil {
		return hands{}, err
	}
	h, err := parsePins(data)
	if err != nil {
		return hands{}, fmt.Errorf("%s: %w", path, err)
	}
	return h, nil
}

func parsePins(data []byte) (h hands, err error) {
	rows, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
	if err != nil {
		return h, err
	}
	if len(rows) == 0 || strings.Join(rows[0], ",") != strings.Join(pinColumns, ",") {
		return h, fmt.Errorf("want the columns %s", strings.Join(pinColumns, ","))
	}
	if len(rows) > mostPins+1 {
		return h, fmt.Errorf("%d pins, want at most %d", len(rows)-1, mostPins)
	}
	for i, row := range rows[1:] {
		var v [5]float64
		for k := range v {
			mm, err := strconv.ParseFloat(row[k+1], 64)
			if v[k] = mm / 1000; err != nil || !(math.Abs(v[k]) <= farthest) {
				return h, fmt.Errorf("pin %d: %s %q, want %.0f–%.0f mm", i+1, pinColumns[k+1], row[k+1], -1000*farthest,
					1000*farthest)
			}
		}
		m := pinMark{r2.Vec{X: v[0], Y: v[1]}, r3.Vec{X: v[2], Y: v[3], Z: v[4]}}
		switch row[0] {
		case pinOwn:
			h.own = append(h.own, m)
		case pinGone:
			h.gone = append(h.gone, m)
		default:
			return h, fmt.Errorf("pin %d is %q, want %q or %q", i+1, row[0], pinOwn, pinGone)
		}
	}
	return h, nil
}
