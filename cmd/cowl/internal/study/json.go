package study

import (
	"math"

	"cowl/cmd/cowl/internal/study/stats"
	"cowl/sim/drape/measure"
)

// resultJSON is result.json of a study.
type resultJSON struct {
	Verb        string           `json:"verb"`
	Physics     string           `json:"physics"`
	Findings    []string         `json:"findings"`
	Cases       []caseJSON       `json:"cases"`
	Differences []differenceJSON `json:"differences"`
}

type caseJSON struct {
	Name    string              `json:"name"`
	Group   string              `json:"group,omitempty"`
	Fabric  string              `json:"fabric"`
	Varied  map[string]float64  `json:"varied,omitempty"`
	Style   string              `json:"style"`
	Without int                 `json:"placings_without_result"`
	Why     string              `json:"why,omitempty"`
	Folds   string              `json:"folds"`
	Figures map[string]meanJSON `json:"figures"`
}

type meanJSON struct {
	Mean   *float64   `json:"mean"`
	Spread *float64   `json:"spread"`
	Each   []*float64 `json:"each"`
}

type differenceJSON struct {
	Figure string   `json:"figure"`
	First  string   `json:"first"`
	Second string   `json:"second"`
	Pairs  int      `json:"pairs"`
	Mean   *float64 `json:"mean"`
	Error  *float64 `json:"standard_error"`
	Limit  *float64 `json:"limit"`
	Clear  bool     `json:"clear"`
}

// orNull turns what is no number into null.
func orNull(v float64) *float64 {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return nil
	}
	return &v
}

// result fills result.json.
func (p *plan) result(rs []caseResult, findings []string) resultJSON {
	out := resultJSON{Verb: p.spec.Verb, Physics: p.spec.Physics, Findings: findings, Cases: []caseJSON{},
		Differences: []differenceJSON{}}
	for i, c := range rs {
		one := caseJSON{Name: c.Name, Group: c.Group, Fabric: c.style.Fabric.Name, Varied: map[string]float64{},
			Figures: map[string]meanJSON{},
			Style:   "styles/" + c.fileName(i) + ".yaml", Folds: stats.Spoken(c.values(countFigure.Value))}
		one.Without, one.Why = c.troubles()
		for k, f := range p.vary {
			one.Varied[f.column()] = c.Values[k]
		}
		for _, m := range measure.Columns {
			mean, deviation := c.summary(m)
			j := meanJSON{Mean: orNull(mean), Spread: orNull(deviation)}
			for _, v := range c.values(m.Value) {
				j.Each = append(j.Each, orNull(v))
			}
			one.Figures[m.Key] = j
		}
		out.Cases = append(out.Cases, one)
	}
	if p.pairs == nil {
		return out
	}
	for _, d := range p.pairs(p, rs) {
		out.Differences = append(out.Differences, differenceJSON{d.Figure.Key, d.First, d.Second, d.Pairs, orNull(d.Mean),
			orNull(d.Error), orNull(d.Limit), d.Clear})
	}
	return out
}
