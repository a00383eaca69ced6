package rows

import (
	"crypto/sha256"
	"encoding/hex"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write physics.txt")

// deciding are the packages from the style to the outcome.
var deciding = strings.Fields(`materials mesh mesh/body mesh/draft mesh/form mesh/lattice sim sim/contact sim/fold sim/drape`)

// The name of the physics follows its source, or rows of old physics would
// pass for new.
func TestPhysics(t *testing.T) {
	h := sha256.New()
	files := 0
	for _, dir := range deciding {
		names, err := filepath.Glob(filepath.Join("../../../../..", dir, "*.go"))
		if err != nil {
			t.Fatal(err)
		}
		for _, name := range names { // in the order of their names
			if strings.HasSuffix(name, "_test.go") || filepath.Base(name) == "readme.go" { // which holds words alone
				continue
			}
			data, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			h.Write(data)
			files++
		}
	}
	if files < 60 {
		t.Fatalf("found %d files of physics, want 60 or more", files)
	}
	want := hex.EncodeToString(h.Sum(nil))[:16]
	if *update {
		if err := os.WriteFile("physics.txt", []byte(want+"\n"), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	if got := Physics(); got != want {
		t.Errorf("physics.txt says %s, the source is %s: run  go test ./cmd/cowl/internal/study/rows -run Physics -update",
			got, want)
	}
}
