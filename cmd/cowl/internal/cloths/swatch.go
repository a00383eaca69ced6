package cloths

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"strings"

	"cowl/cmd/cowl/internal/console"
	"cowl/materials"
	"cowl/materials/scalar"
)

// Swatch is the verb swatch.
type Swatch struct {
	Sheet string `short:"s" placeholder:"FILE" help:"Tests in a YAML file, with the names of the flags below as keys; flags go before it."`
	Name  string `placeholder:"NAME" help:"Name of the fabric, like my-crepe (that of the file of --out, else of --sheet, else swatch)."`
	Title string `placeholder:"TEXT" help:"What it is, for people."`
	Fibre string `placeholder:"TEXT" help:"What it is made of."`
	Weave string `placeholder:"TEXT" help:"How it is woven."`
	Tests any    `embed:"" table:"tests"`
	Out   string `short:"o" placeholder:"FILE" help:"Write the fabric file here, for cowl drape --fabric-file. Without it: printed below the table, which is a comment."`
	JSON  bool   `name:"json" help:"Print one JSON object and nothing else."`
	Quiet bool   `short:"q" help:"Print nothing but the fabric file."`
}

// Help says what the tests are.
func (Swatch) Help() string {
	return `Needed: weight, and bending along warp and weft. What was not tested is taken from a stated default, and the table says so. Several readings of a test stand with commas between; they give the ±, which is one standard uncertainty. One reading counts with the step in which it is written: 3.2cm with 1 mm, 3.20cm with 0.1 mm, 10cm with 1 mm.

KES and FAST print shear with the same letter G in units 56 times apart: 0.53 gf/(cm·deg) of KES is 30 N/m of FAST. A value that fits the other sheet only is refused.`
}

// Run works the tests out and gives the fabric file.
func (w Swatch) Run(c console.Console) error {
	s, err := w.swatch()
	if err != nil {
		return err
	}
	m, err := s.Measure()
	if err != nil {
		return err
	}
	if w.Out != "" {
		if err := w.write(m); err != nil {
			return err
		}
	}
	switch {
	case w.JSON:
		return c.PrintJSON(swatchJSONOf(m, w.Out))
	case w.Out != "" && w.Quiet:
	case w.Quiet:
		fmt.Fprintf(c.Out, "%s", m.Fabric.YAML())
	case w.Out != "":
		swatchReport(c.Out, m)
		fmt.Fprintf(c.Out, "\nWrote %s: cowl drape --fabric-file %s\n", w.Out, w.Out)
	default:
		commented(c.Out, m)
		fmt.Fprintf(c.Out, "%s", m.Fabric.YAML())
	}
	return nil
}

// swatch reads the sheet and lets the flags have their say.
func (w Swatch) swatch() (s materials.Swatch, err error) {
	if w.Sheet != "" {
		if s, err = materials.SwatchFromFile(w.Sheet); err != nil {
			return s, err
		}
	}
	for _, word := range []struct {
		to   *string
		flag string
	}{{&s.Name, w.Name}, {&s.Title, w.Title}, {&s.Fibre, w.Fibre}, {&s.Weave, w.Weave}} {
		if c, bad := scalar.Control(word.flag); bad {
			return s, fmt.Errorf("%q has the control character %U, want plain text for name, title, fibre and weave", word.flag,
				c)
		}
		if word.flag != "" {
			*word.to = strings.Join(strings.Fields(word.flag), " ")
		}
	}
	if s.Name == "" {
		s.Name = w.fileName()
	}
	return s, setTests(&s, w.Tests)
}

var unnamed = regexp.MustCompile(`[^a-z0-9]+`)

// fileName names the fabric after the file it is written to, else after the sheet it is read
// from, in the letters that a name may have; empty: there is neither.
func (w Swatch) fileName() string {
	for _, file := range []string{w.Out, w.Sheet} {
		base := strings.TrimSuffix(filepath.Base(file), filepath.Ext(file))
		if name := strings.Trim(unnamed.ReplaceAllString(strings.ToLower(base), "-"), "-"); file != "" && name != "" {
			return name
		}
	}
	return ""
}

// write saves the fabric file, but never over the sheet it is made of.
func (w Swatch) write(m materials.Sample) error {
	if sheet, err := os.Stat(w.Sheet); err == nil {
		if out, err := os.Stat(w.Out); err == nil && os.SameFile(sheet, out) {
			return errors.New("--out: is the sheet itself, want another file")
		}
	}
	if info, err := os.Stat(w.Out); err == nil && info.IsDir() || strings.HasSuffix(w.Out, string(filepath.Separator)) {
		return fmt.Errorf("%w: --out: %s is a folder, want a file", console.ErrCannotSave, w.Out)
	}
	return console.Save(filepath.Dir(w.Out), []console.File{{Name: filepath.Base(w.Out), Data: m.Fabric.YAML()}})
}

// commented prints the report as a comment of YAML.
func commented(w io.Writer, m materials.Sample) {
	var b strings.Builder
	swatchReport(&b, m)
	for line := range strings.Lines(b.String()) {
		fmt.Fprint(w, strings.TrimRight("# "+line, " \n")+"\n")
	}
}
