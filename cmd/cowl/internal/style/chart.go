package style

import (
	"errors"
	"math"
	"slices"
	"strings"

	"cowl/materials/infile"
	"cowl/materials/scalar"
	"cowl/mesh/body"
	"cowl/mesh/limit"

	"github.com/goccy/go-yaml/ast"
)

// What a chart of the user's own may have.
const (
	mostSizes = 60
	mostSize  = 999 // the largest size number
)

// UseChartFile takes the size chart of a file.
func (s *Style) UseChartFile(path string) error {
	c, err := ChartFromFile(path)
	if err != nil {
		return limit.Under("--chart", err)
	}
	s.Chart = c
	return nil
}

// ChartFromFile reads a size chart: sizes, source and height_cm, and the measurements of
// the style file, each a list of one number a size or one number for all.
func ChartFromFile(path string) (*body.Chart, error) {
	data, err := infile.Read(path, "a size chart in YAML", infile.YAML)
	if err != nil {
		return nil, err
	}
	r := &source{file: path}
	c := r.chartOf(r.document(data), nil)
	return c, r.wrong()
}

// chart reads a chart within a style file: the name of its file, or the chart itself.
func (r *source) chart(s *Style, e entry) {
	if isMapping(e.value) {
		s.Chart = r.chartOf(r.mapping(e.value, "chart"), e.value)
		return
	}
	path, ok := r.word(e)
	if !ok {
		return
	}
	c, err := ChartFromFile(r.beside(path))
	if err != nil {
		r.fail(e.value, "chart: %v", err)
	}
	s.Chart = c
}

// chartOf reads the entries of a chart, which stands at a node; nil for a file.
func (r *source) chartOf(entries []entry, at ast.Node) *body.Chart {
	c, seen := &body.Chart{}, map[string]ast.Node{}
	for _, e := range entries { // first: the others are as many
		if e.key == "sizes" {
			c.Sizes, at = r.sizes(e), e.value
		}
	}
	if len(c.Sizes) == 0 {
		if len(r.errs) == 0 {
			r.fail(at, "chart: no sizes, want a list of whole numbers: sizes: [36, 38, 40]")
		}
		return nil
	}
	c.Bodies = make([]body.Body, len(c.Sizes))
	for _, e := range entries {
		r.chartKey(c, e, seen)
	}
	if len(r.errs) == 0 {
		r.checkChart(c, at, seen)
	}
	return c
}

// sizes reads the size numbers.
func (r *source) sizes(e entry) []int {
	values, ok := r.list(e)
	if !ok {
		return nil
	}
	var out []int
	for _, v := range values {
		last := -1
		if len(out) > 0 {
			last = out[len(out)-1]
		}
		if v != math.Trunc(v) || v < 0 || v > mostSize || int(v) <= last {
			r.fail(e.value, "sizes: %g, want whole numbers from 0 to %d, each once and in rising order", v, mostSize)
			return nil
		}
		out = append(out, int(v))
	}
	if len(out) == 0 || len(out) > mostSizes {
		r.fail(e.value, "sizes: %d of them, want 1–%d", len(out), mostSizes)
		return nil
	}
	return out
}

// list reads the numbers of a list.
func (r *source) list(e entry) ([]float64, bool) {
	list, ok := e.value.(*ast.SequenceNode)
	if !ok {
		r.fail(e.value, "%s is %s, want a list of numbers: [1, 2, 3]", e.key, scalar.Shown(e.value))
		return nil, false
	}
	var out []float64
	for _, n := range list.Values {
		v, ok := r.number(entry{e.key, e.at, n})
		if !ok {
			return nil, false
		}
		out = append(out, v)
	}
	return out, true
}

// chartKey reads one key of a chart. Where it stands goes into seen.
func (r *source) chartKey(c *body.Chart, e entry, seen map[string]ast.Node) {
	switch {
	case e.key == "sizes": // read before
		return
	case e.key == "source":
		c.Source, _ = r.word(e)
		return
	case strings.HasPrefix(e.key, "height_"):
		f, unit, err := find("body", e.key)
		v, ok := r.number(e)
		if err != nil || !ok {
			r.failIf(e.at, err)
			return
		}
		c.Height = toMetres(v, unit)
		r.failIf(e.value, limit.Range{Field: f.Name, Value: c.Height, Lo: body.LeastHeight, Hi: body.MostHeight,
			Unit: limit.Length, Why: limit.Say("the height that the chart is made for")}.Check())
		return
	}
	f, unit, err := find("body", e.key)
	if err != nil || f.measure == nil {
		r.fail(e.at, "chart: unknown key %q, want sizes, source, height_cm or one of %s", e.key,
			strings.Join(chartKeys(nil), ", "))
		return
	}
	seen[f.Name] = e.value
	r.column(c, f, unit, e)
}

// column reads one measurement of every size.
func (r *source) column(c *body.Chart, f Field, unit string, e entry) {
	var values []float64
	if v, ok := scalar.Number(e.value); ok {
		values = slices.Repeat([]float64{v}, len(c.Sizes))
	} else if values, ok = r.list(e); !ok {
		return
	}
	if len(values) != len(c.Sizes) {
		r.fail(e.value, "%s has %d numbers, want %d: one for each of the sizes, or one for all", e.key, len(values),
			len(c.Sizes))
		return
	}
	for i, v := range values {
		if f.kind == angle {
			v = toRadians(v)
		} else {
			v = toMetres(v, unit)
		}
		*f.measure(&c.Bodies[i]) = v
	}
}

// checkChart refuses a chart that lacks a measurement, or of which a size has none that can
// be drafted.
func (r *source) checkChart(c *body.Chart, at ast.Node, seen map[string]ast.Node) {
	missing := chartKeys(func(f Field, m body.Measure) bool { return seen[f.Name] == nil && !m.Optional() })
	if missing != nil {
		r.fail(at, "chart: %s missing, want one number a size", strings.Join(missing, ", "))
		return
	}
	for i, b := range c.Bodies {
		if i > 0 && b.Bust <= c.Bodies[i-1].Bust {
			r.fail(seen["bust"], "bust of size %d %v, want more than the %v of size %d: the chart is read by the bust",
				c.Sizes[i], limit.Metres(b.Bust), limit.Metres(c.Bodies[i-1].Bust), c.Sizes[i-1])
			return
		}
		err := b.Filled().Validate()
		var e *limit.Error
		if errors.As(err, &e) {
			where := seen[strings.ReplaceAll(e.Field, " ", "_")]
			if where == nil {
				where = at
			}
			r.fail(where, "size %d: %v", c.Sizes[i], err)
		}
	}
}

// failIf notes an error if there is one.
func (r *source) failIf(n ast.Node, err error) {
	if err != nil {
		r.fail(n, "chart: %v", err)
	}
}

// fieldOf is the field of a measurement.
func fieldOf(m body.Measure) Field {
	name := strings.ReplaceAll(m.Name, " ", "_")
	return fieldThat(name, func(f Field) bool { return f.Name == name && f.measure != nil })
}

// chartKeys lists the keys of the measurements that which chooses; nil: of all.
func chartKeys(which func(Field, body.Measure) bool) []string {
	var out []string
	for _, m := range body.Measures() {
		f := fieldOf(m)
		if which == nil || which(f, m) {
			out = append(out, f.key())
		}
	}
	return out
}
