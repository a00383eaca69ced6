package window

import "testing"

// Undo goes back through the states, redo forward; a change after an undo
// forgets what was undone; steps of one drag are one change.
func TestHistory(t *testing.T) {
	var h History[int]
	now := 0
	set := func(v int, key string) { h.Record(now, "to", key); now = v }
	undo := func() bool {
		v, _, ok := h.Undo(now)
		now = v
		return ok
	}
	redo := func() bool {
		v, _, ok := h.Redo(now)
		now = v
		return ok
	}
	set(1, "")
	set(2, "slider")
	set(3, "slider")
	set(4, "slider")
	h.Seal()
	set(5, "slider")
	for _, c := range []struct {
		do   func() bool
		want int
		ok   bool
	}{{undo, 4, true}, {undo, 1, true}, {redo, 4, true}, {undo, 1, true}, {undo, 0, true}, {undo, 0, false},
		{redo, 1, true}, {redo, 4, true}, {redo, 5, true}, {redo, 5, false}} {
		if ok := c.do(); ok != c.ok || now != c.want {
			t.Fatalf("state %d, went %v, want %d and %v", now, ok, c.want, c.ok)
		}
	}
	undo()
	set(9, "")
	if redo() || now != 9 {
		t.Errorf("redo after a new change gave %d, want nothing to do", now)
	}
}

func TestHistoryIsBounded(t *testing.T) {
	var h History[int]
	for i := range 3 * mostPast {
		h.Record(i, "", "")
	}
	n, now := 0, 3*mostPast
	for ok := true; ok; n++ {
		now, _, ok = h.Undo(now)
	}
	if n-1 != mostPast || now != 2*mostPast {
		t.Errorf("%d undos back to %d, want %d back to %d", n-1, now, mostPast, 2*mostPast)
	}
}
