package style

import (
	"testing"

	"cowl/mesh/body"
	"cowl/mesh/draft"
	"cowl/mesh/form"
)

// A form is kept for the body it was built for, and for no other.
func TestFormOf(t *testing.T) {
	small, err := body.FromChart(8)
	if err != nil {
		t.Fatal(err)
	}
	large, err := body.FromChart(18)
	if err != nil {
		t.Fatal(err)
	}
	of := func(b body.Body, worn draft.Side) *form.Form {
		f, err := FormOf(b, worn)
		if err != nil {
			t.Fatal(err)
		}
		return f
	}
	first := of(small, draft.AtFront)
	if again := of(small, draft.AtFront); again != first {
		t.Error("the form of one body was built twice")
	}
	if other := of(large, draft.AtFront); other.Apex(1) == first.Apex(1) {
		t.Errorf("sizes 8 and 18 have their apex at %v", first.Apex(1))
	}
	if back := of(small, draft.AtBack); back.Apex(1) == first.Apex(1) {
		t.Errorf("turned to its back the form has its apex at %v, as before", first.Apex(1))
	}
	large.Bust = -1
	if _, err := FormOf(large, draft.AtFront); err == nil {
		t.Error("a body with a bust of -1 m has a form")
	}
}
