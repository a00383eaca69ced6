package main

import (
	"errors"
	"runtime"

	"cowl/cmd/cowl/internal/drawn"
	"cowl/cmd/cowl/internal/flags"
	"cowl/cmd/cowl/internal/study"
	"cowl/cmd/cowl/internal/study/rows"
	"cowl/cmd/cowl/internal/style"
)

// clothFlags choose one cloth.
type clothFlags struct {
	Fabric     string `short:"f" xor:"cloth" placeholder:"NAME" help:"Fabric of the library, see cowl fabrics."`
	FabricFile string `xor:"cloth" placeholder:"FILE" help:"Fabric file in YAML, as cowl fabrics NAME prints it."`
}

// override lets the flags have their say.
func (f clothFlags) override(s *style.Style) error {
	switch {
	case f.Fabric != "":
		return s.UseFabric(f.Fabric)
	case f.FabricFile != "":
		return s.UseFabricFile(f.FabricFile)
	}
	return nil
}

// benchFlags say how a study is computed, where it is kept and what is printed.
type benchFlags struct {
	Hang  any     `embed:"" table:"spacing folds edge_depth waist shake lean free"`
	Seed  *uint64 `placeholder:"N" help:"The first hand; the others are the next numbers. All cuts are placed by the same hands."`
	Jobs  *int    `type:"count" least:"1" most:"256" placeholder:"N" help:"Drapes at a time, 1 to 256 (one a core)."`
	Retry bool    `help:"Hang again what failed; finished rows are never hung again."`
	JSON  bool    `name:"json" help:"Print result.json and nothing else."`
	Quiet bool    `short:"q" help:"Print nothing but warnings."`
}

// hangFlags are what the studies of one style share.
type hangFlags struct {
	cutFlags
	clothFlags
	benchFlags
}

// styled reads the style and lets all flags have their say.
func (f hangFlags) styled() (style.Style, error) {
	s, err := f.load()
	if err != nil {
		return s, err
	}
	return s, errors.Join(f.clothFlags.override(&s), f.benchFlags.override(&s))
}

// choiceFlags are hangFlags with several fabrics to choose from.
type choiceFlags struct {
	hangFlags
	Fabrics []string `placeholder:"A,B,C" help:"Every cut in each of these fabrics."`
}

// spec makes what is asked of a study of cuts.
func (f choiceFlags) spec(verb string, placings int) (study.Spec, error) {
	s, err := f.styled()
	if err != nil {
		return study.Spec{}, err
	}
	if len(f.Fabrics) > 0 && (f.Fabric != "" || f.FabricFile != "") {
		return study.Spec{}, errors.New("--fabric and --fabrics: want one of them")
	}
	spec, err := study.NewSpec(verb, s, placings)
	if err != nil {
		return study.Spec{}, err
	}
	spec.Fabrics, err = study.Pin(f.Fabrics)
	return spec, err
}

// partFlag leaves a share of a study to other machines.
type partFlag struct {
	Part rows.Part `placeholder:"I/N" help:"Hang only the I-th of N shares, for a batch scheduler; then cowl gather."`
}

// override lets the flags have their say.
func (f benchFlags) override(s *style.Style) error {
	if f.Seed != nil {
		if err := s.Set("seed", float64(*f.Seed), "--seed"); err != nil {
			return err
		}
	}
	return flags.SetFields(s, f.Hang)
}

// options are those of a study that these flags compute in dir.
func (f benchFlags) options(dir string, p rows.Part, draw drawn.Stager) study.Options {
	o := study.Options{Dir: dir, Part: p, Jobs: runtime.GOMAXPROCS(0), Retry: f.Retry, Stage: draw, JSON: f.JSON,
		Quiet: f.Quiet}
	if f.Jobs != nil {
		o.Jobs = *f.Jobs
	}
	return o
}
