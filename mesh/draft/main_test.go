package draft

import (
	"testing"

	"cowl/mesh/proptest"
)

// TestMain fixes 200 random bodies, the same each time.
func TestMain(m *testing.M) { proptest.Main(m, 200, 1) }
