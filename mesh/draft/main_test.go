package draft

import (
	"flag"
	"os"
	"testing"
)

// TestMain fixes the random bodies: 200 of them, the same each time.
func TestMain(m *testing.M) {
	flag.Parse()
	for name, value := range map[string]string{"rapid.checks": "200", "rapid.seed": "1", "rapid.nofailfile": "true"} {
		if err := flag.Set(name, value); err != nil {
			panic("draft: " + err.Error())
		}
	}
	os.Exit(m.Run())
}
