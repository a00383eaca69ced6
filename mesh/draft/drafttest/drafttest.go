// Package drafttest drafts blocks and fronts for the tests of what is made of
// them. Start at Front.
package drafttest

import (
	"testing"

	"cowl/mesh/body"
	"cowl/mesh/draft"
)

// Block returns the one-dart front block of a chart size.
func Block(t testing.TB, size int) draft.Block {
	t.Helper()
	return blockAt(t, size, draft.AtFront)
}

// blockAt returns the block of a cowl that is worn at a side.
func blockAt(t testing.TB, size int, worn draft.Side) draft.Block {
	t.Helper()
	b, err := body.FromChart(size)
	if err != nil {
		t.Fatal(err)
	}
	k, err := draft.CowlFromBody(b, worn)
	if err != nil {
		t.Fatal(err)
	}
	return k
}

// Front returns the front of a chart size, cut as draft.DefaultCut with changes; the back
// cowl, if they set it to be worn there.
func Front(t testing.TB, size int, change func(*draft.Cut)) draft.Cowl {
	t.Helper()
	c := draft.DefaultCut()
	change(&c)
	p, err := draft.Draft(blockAt(t, size, c.Worn), c)
	if err != nil {
		t.Fatal(err)
	}
	return p
}
