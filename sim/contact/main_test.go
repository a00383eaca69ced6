package contact

import (
	"testing"

	"cowl/mesh/proptest"
)

// TestMain fixes the number and the seed of the property cases.
func TestMain(m *testing.M) { proptest.Main(m, 200, 1) }
