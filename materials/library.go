package materials

import (
	"embed"
	"fmt"
	"slices"
	"strings"
	"sync"

	"cowl/mesh/limit"
)

//go:embed library/*.yaml
var libraryFiles embed.FS

// defaultName is the limpest fabric of the library with every deciding value
// published.
const defaultName = "polyester-twill"

// library parses the built-in files once. They are part of the program, so a
// bad one panics; a test reads them all.
var library = sync.OnceValue(func() []Fabric {
	files, err := libraryFiles.ReadDir("library")
	if err != nil {
		panic(fmt.Sprintf("materials: %v", err))
	}
	var out []Fabric
	for _, d := range files {
		path := "library/" + d.Name()
		data, err := libraryFiles.ReadFile(path)
		if err != nil {
			panic(fmt.Sprintf("materials: %v", err))
		}
		f, err := Parse(path, data)
		if err != nil {
			panic(fmt.Sprintf("materials: %v", err))
		}
		out = append(out, f)
	}
	slices.SortFunc(out, func(a, b Fabric) int { return strings.Compare(a.Name, b.Name) })
	return out
})

// Library returns the built-in fabrics by name. The slice and what it points
// to are the caller's.
func Library() []Fabric {
	out := slices.Clone(library())
	for i := range out {
		out[i].Drape = out[i].Drape.clone()
	}
	return out
}

// Find returns the built-in fabric of that name. The error for an unknown one
// lists names near it, or all names if none is near.
func Find(name string) (Fabric, error) {
	names := make([]string, 0, len(library()))
	for _, f := range library() {
		if f.Name == name {
			f.Drape = f.Drape.clone()
			return f, nil
		}
		names = append(names, f.Name)
	}
	close := near(name, names)
	for _, f := range (Query{Words: strings.ReplaceAll(name, "-", " ")}).Pick(library()) {
		if name != "" && len(close) < 6 && !slices.Contains(close, f.Name) {
			close = append(close, f.Name) // by its title: silk-charmeuse
		}
	}
	if len(close) > 0 {
		return Fabric{}, limit.Errorf("fabric", "no fabric %.120q, near: %s", name, strings.Join(close, ", "))
	}
	return Fabric{}, limit.Errorf("fabric", "no fabric %.120q, want one of %s", name, strings.Join(names, ", "))
}

// Default returns the fabric used where none is named: a limp polyester twill
// with published weight, bending and shear.
func Default() Fabric {
	f, err := Find(defaultName)
	if err != nil {
		panic(err.Error())
	}
	return f
}

func (d *DrapeMeter) clone() *DrapeMeter {
	if d == nil {
		return nil
	}
	c := *d
	return &c
}
