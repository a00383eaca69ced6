// Package proptest fixes the random cases of property tests (rapid): their
// number and their seed, so that a test tries the same ones each time. Start at
// Main.
package proptest

import (
	"flag"
	"os"
	"strconv"
	"testing"
)

// Main runs the tests of a package with so many cases a property, drawn from
// the seed; call it from TestMain of a package whose tests use rapid. It ends
// the process.
func Main(m *testing.M, cases, seed int) {
	flag.Parse()
	if testing.Short() {
		cases *= 5 // rapid runs a fifth of them under -short
	}
	for name, value := range map[string]string{"rapid.checks": strconv.Itoa(cases), "rapid.seed": strconv.Itoa(seed),
		"rapid.nofailfile": "true"} {
		if err := flag.Set(name, value); err != nil {
			panic("proptest: " + err.Error())
		}
	}
	os.Exit(m.Run())
}
