package lattice

import (
	"flag"
	"os"
	"testing"
)

// TestMain fixes the number and the seed of the property cases.
func TestMain(m *testing.M) {
	flag.Parse()
	checks := "200"
	if testing.Short() {
		checks = "1000" // rapid runs a fifth of it under -short
	}
	for name, value := range map[string]string{"rapid.checks": checks, "rapid.seed": "1", "rapid.nofailfile": "true"} {
		if err := flag.Set(name, value); err != nil {
			panic(err)
		}
	}
	os.Exit(m.Run())
}
