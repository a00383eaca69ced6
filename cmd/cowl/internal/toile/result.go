package toile

import (
	"bytes"
	"encoding/csv"
	"path/filepath"
	"strconv"

	"cowl/cmd/cowl/internal/study/rows"
)

// resultJSON is result.json of the sheet.
type resultJSON struct {
	Book     string          `json:"book"`
	Physics  string          `json:"physics"`
	Placings int             `json:"placings"`
	Findings []string        `json:"findings"`
	Figures  []agreementJSON `json:"figures"`
	Toiles   []toileJSON     `json:"toiles"`
}

// agreementJSON is a kind of figure over all toiles.
type agreementJSON struct {
	Figure string   `json:"figure"`
	N      int      `json:"n"`
	Bias   *float64 `json:"bias"`   // prediction less toile; mm, or folds
	Spread *float64 `json:"spread"` // the same; null for fewer than two
	Unit   string   `json:"unit"`
}

// toileJSON is a toile with its prediction.
type toileJSON struct {
	Key     string              `json:"key"`
	Date    string              `json:"date"`
	Style   string              `json:"style"`
	Fabric  string              `json:"fabric"`
	Side    string              `json:"side,omitempty"` // back; else the front, and cf in a key is then the centre back
	Laid    *float64            `json:"laid"`
	Without int                 `json:"placings_without_result"`
	Why     string              `json:"why,omitempty"`
	Figures map[string]pairJSON `json:"figures"`
}

// pairJSON is a figure of a toile; its key says the unit.
type pairJSON struct {
	Toile     *float64 `json:"toile"`
	Predicted *float64 `json:"predicted"`
	Spread    *float64 `json:"spread"` // from hand to hand
}

// result fills result.json.
func (s overview) result(findings []string) resultJSON {
	out := resultJSON{Book: filepath.ToSlash(s.book.Path), Physics: rows.Physics(), Placings: s.placings,
		Findings: findings}
	for _, a := range agreements(s.all) {
		f := figure{kind: a.kind}
		j := agreementJSON{Figure: s.says(a.kind.String()), N: len(a.each), Bias: orNull(f.inFiles(a.bias)), Unit: "mm"}
		if a.kind == Kept {
			j.Unit = "folds"
		}
		if len(a.each) > 1 {
			j.Spread = orNull(f.inFiles(a.spread))
		}
		out.Figures = append(out.Figures, j)
	}
	for _, h := range s.all {
		t := toileJSON{Key: h.Key, Date: h.Date, Style: h.Toile.Style, Fabric: h.Fabric, Side: h.sideKey(),
			Laid:    orNull(h.Laid),
			Without: len(h.Each) - len(h.hands), Why: h.Why, Figures: map[string]pairJSON{}}
		for _, f := range figures() {
			mean, deviation := h.predicted(f)
			p := pairJSON{Toile: orNull(f.inFiles(f.of(h.Reading))), Predicted: orNull(f.inFiles(mean))}
			if p.Predicted != nil {
				p.Spread = orNull(f.inFiles(deviation))
			}
			if p.Toile != nil || p.Predicted != nil {
				t.Figures[f.key()] = p
			}
		}
		out.Toiles = append(out.Toiles, t)
	}
	return out
}

// orNull turns what is no number into null.
func orNull(v float64) *float64 {
	if v != v {
		return nil
	}
	v = rounded(v)
	return &v
}

// table is table.csv: a line a toile, of every figure the toile and the prediction.
func (s overview) table() []byte {
	head := []string{"key", "date", "style", "fabric", "laid"}
	for _, f := range figures() {
		head = append(head, f.key()+"_toile", f.key()+"_mean", f.key()+"_spread")
	}
	lines := [][]string{append(head, "placings", "without_result", "why", "photo", "note", "side")}
	for _, h := range s.all {
		line := []string{h.Key, h.Date, h.Toile.Style, h.Fabric, exact(h.Laid)}
		for _, f := range figures() {
			mean, deviation := h.predicted(f)
			if mean != mean {
				deviation = mean
			}
			line = append(line, exact(f.inFiles(f.of(h.Reading))), exact(f.inFiles(mean)), exact(f.inFiles(deviation)))
		}
		lines = append(lines, append(line, strconv.Itoa(len(h.Each)), strconv.Itoa(len(h.Each)-len(h.hands)), h.Why, h.Photo,
			h.Note, h.worn.String()))
	}
	var out bytes.Buffer
	if err := csv.NewWriter(&out).WriteAll(lines); err != nil {
		panic("toile: " + err.Error()) // a buffer takes all
	}
	return out.Bytes()
}

// exact writes a value for a program to read; empty where there is none.
func exact(v float64) string {
	if v != v {
		return ""
	}
	return tidy(v)
}
