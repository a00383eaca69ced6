//go:build cgo

package main

import (
	"encoding/json"
	"errors"
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

const (
	mostInKnot = 10 // files of a package that use each other, directly or through others
	mostBackUp = 40 // references against the order of the files, in all packages of cmd together
)

// Files of a package call downwards. Of those that use each other's declarations none can
// be read without the rest, so there are few of them in every package of cmd. Without C
// the largest, the window, is not there.
func TestKnots(t *testing.T) {
	packages := listed(t)
	fset := token.NewFileSet()
	export := map[string]string{}
	for _, p := range packages {
		export[p.ImportPath] = p.Export
	}
	known := importer.ForCompiler(fset, "gc", func(path string) (io.ReadCloser, error) { return os.Open(export[path]) })
	all, back, seen := 0, 0, 0
	for _, p := range packages {
		if !strings.HasPrefix(p.ImportPath, "cowl/cmd/") {
			continue
		}
		seen++
		uses := fileUses(t, fset, known, p)
		knot := largestKnot(uses)
		if len(knot) > mostInKnot {
			t.Errorf("%s: %d files use each other, want at most %d; move what two of them need below both: %s",
				p.ImportPath, len(knot), mostInKnot, strings.Join(knot, " "))
		}
		n, up := uses.count(), backUp(uses)
		for _, e := range up {
			t.Logf("%s: %s names %s of %s above it", p.ImportPath, e[0], uses[e[0]][e[1]], e[1])
		}
		all, back = all+n, back+len(up)
		t.Logf("%-40s %3d files, %4d references, %2d back up, largest knot %2d", p.ImportPath, len(p.files()), n,
			len(up), max(len(knot), 1))
	}
	t.Logf("in all %d references from file to file, %d of them back up", all, back)
	if seen < 20 || all < 1000 {
		t.Errorf("looked at %d packages with %d references, want those of cmd", seen, all)
	}
	if back > mostBackUp {
		t.Errorf("%d of %d references from file to file run back up, want at most %d", back, all, mostBackUp)
	}
}

// goPackage is what go list tells of a package.
type goPackage struct {
	ImportPath, Dir, Export string
	GoFiles, CgoFiles       []string
}

// files are the sources, without tests.
func (p goPackage) files() []string { return slices.Concat(p.GoFiles, p.CgoFiles) }

// listed returns the packages of cmd and all that they import, compiled.
func listed(t *testing.T) []goPackage {
	t.Helper()
	out, err := exec.Command("go", "list", "-buildvcs=false", "-export", "-deps",
		"-json=ImportPath,Dir,Export,GoFiles,CgoFiles", "cowl/cmd/...").Output()
	if err != nil {
		t.Fatalf("go list: %v", err)
	}
	var all []goPackage
	for d := json.NewDecoder(strings.NewReader(string(out))); ; {
		var p goPackage
		if err := d.Decode(&p); errors.Is(err, io.EOF) {
			return all
		} else if err != nil {
			t.Fatalf("go list: %v", err)
		}
		all = append(all, p)
	}
}

// uses has, for each file, the files whose declarations it names, and one of the names.
type uses map[string]map[string]string

// count is the number of references: pairs of files.
func (u uses) count() (n int) {
	for _, to := range u {
		n += len(to)
	}
	return n
}

// fileUses checks the types of a package and sees where what each file names is declared.
func fileUses(t *testing.T, fset *token.FileSet, known types.Importer, p goPackage) uses {
	t.Helper()
	var files []*ast.File
	for _, name := range p.files() {
		f, err := parser.ParseFile(fset, filepath.Join(p.Dir, name), nil, parser.SkipObjectResolution)
		if err != nil {
			t.Fatal(err)
		}
		files = append(files, f)
	}
	info := &types.Info{Uses: map[*ast.Ident]types.Object{}}
	conf := types.Config{Importer: known, FakeImportC: true}
	pkg, err := conf.Check(p.ImportPath, fset, files, info)
	if err != nil {
		t.Fatalf("%s: %v", p.ImportPath, err)
	}
	base := func(at token.Pos) string { return filepath.Base(fset.Position(at).Filename) }
	out := uses{}
	for id, to := range info.Uses {
		from := base(id.Pos())
		if to.Pkg() != pkg || base(to.Pos()) == from {
			continue
		}
		if out[from] == nil {
			out[from] = map[string]string{}
		}
		if f := base(to.Pos()); out[from][f] == "" || to.Name() < out[from][f] {
			out[from][f] = to.Name()
		}
	}
	return out
}
