package style

import (
	"cowl/materials"
	"cowl/mesh/limit"

	"github.com/goccy/go-yaml/ast"
)

// fabric reads the cloth: a name of the library, {file: cloth.yaml} beside the
// style file, or the values themselves, with the keys of a fabric file.
func (r *source) fabric(s *Style, e entry) {
	if _, ok := e.value.(*ast.StringNode); ok {
		name, _ := r.word(e)
		f, err := materials.Find(name)
		if err != nil {
			r.fail(e.value, "fabric: %v", err)
			return
		}
		s.Fabric = f
		return
	}
	values := r.mapping(e.value, "fabric")
	if len(values) == 1 && values[0].key == "file" {
		r.fabricFile(s, values[0])
		return
	}
	if len(r.errs) > 0 {
		return
	}
	f, err := materials.ParseNode(r.file, e.value)
	if err != nil {
		r.note(err)
		return
	}
	s.Fabric = rounded(f)
}

// fabricFile reads a fabric file named from where the style file lies.
func (r *source) fabricFile(s *Style, e entry) {
	path, _ := r.word(e)
	f, err := materials.FromFile(r.beside(path))
	if err != nil {
		r.fail(e.value, "fabric: %v", err)
		return
	}
	s.Fabric = rounded(f)
}

// rounded returns f as it is written into a style file, so that the first run
// takes the same numbers as the next.
func rounded(f materials.Fabric) materials.Fabric {
	g, err := materials.Parse(f.Name, f.YAML())
	if err != nil {
		panic("style: a fabric does not read back: " + err.Error())
	}
	return g
}

// UseFabric takes a fabric of the library.
func (s *Style) UseFabric(name string) error {
	f, err := materials.Find(name)
	if err != nil {
		return limit.Under("--fabric", err)
	}
	s.Fabric = f
	return nil
}

// UseFabricFile takes the fabric of a file.
func (s *Style) UseFabricFile(path string) error {
	f, err := materials.FromFile(path)
	if err != nil {
		return limit.Under("--fabric-file", err)
	}
	s.Fabric = rounded(f)
	return nil
}

// Deciding are the values that decide how a cloth falls.
var Deciding = []materials.Field{materials.Weight, materials.BendWarp, materials.BendWeft, materials.Shear}

// LeastKnown is how the least known of the deciding values of f is known.
func LeastKnown(f materials.Fabric) materials.Kind {
	k := materials.Measured
	for _, q := range Deciding {
		k = max(k, f.Basis[q].Kind)
	}
	return k
}
