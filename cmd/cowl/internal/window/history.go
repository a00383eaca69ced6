package window

// History is what undo and redo go back and forth in: whole states, the one
// before each change. The zero History is empty.
type History[S any] struct {
	past, future []entry[S]
	key          string // of the change that is still going on
}

// entry is a state and the change that left it.
type entry[S any] struct {
	state S
	what  string // the change, in words
}

// mostPast is how many changes can be undone.
const mostPast = 200

// Record keeps the state before a change that is about to be made. Changes of
// the same key in a row, as while a slider is dragged, are one change; an empty
// key stands alone. A change after an undo forgets what was undone.
func (h *History[S]) Record(before S, what, key string) {
	if key != "" && key == h.key {
		return
	}
	h.key = key
	h.future = nil
	h.past = append(h.past, entry[S]{before, what})
	if len(h.past) > mostPast {
		h.past = h.past[1:]
	}
}

// Seal ends the change that is going on, so that the next is one of its own.
func (h *History[S]) Seal() { h.key = "" }

// Undo returns the state before the last change and what that was; false where
// there is none. now is the present state.
func (h *History[S]) Undo(now S) (S, string, bool) { return h.swap(&h.past, &h.future, now) }

// Redo returns the state after the change undone last.
func (h *History[S]) Redo(now S) (S, string, bool) { return h.swap(&h.future, &h.past, now) }

func (h *History[S]) swap(from, to *[]entry[S], now S) (S, string, bool) {
	h.key = ""
	n := len(*from)
	if n == 0 {
		return now, "", false
	}
	e := (*from)[n-1]
	*from = (*from)[:n-1]
	*to = append(*to, entry[S]{now, e.what})
	return e.state, e.what, true
}

// Next returns the words of what Undo and Redo would do next; empty for none.
func (h *History[S]) Next() (undo, redo string) {
	if n := len(h.past); n > 0 {
		undo = h.past[n-1].what
	}
	if n := len(h.future); n > 0 {
		redo = h.future[n-1].what
	}
	return undo, redo
}
