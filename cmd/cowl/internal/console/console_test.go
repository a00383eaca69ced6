package console

import (
	"bytes"
	"errors"
	"testing"
)

// What a terminal obeys is never written, however the letters are cut up.
func TestTame(t *testing.T) {
	text := "é\x1b[2J\u009b31m\x7f\r\u202eüber\t\n\xff\x00ñ"
	want := "é�[2J�31m���über\t\n��ñ"
	for size := 1; size < len(text); size++ {
		var b bytes.Buffer
		w := &tame{w: &b}
		for at := 0; at < len(text); at += size {
			if n, err := w.Write([]byte(text[at:min(at+size, len(text))])); err != nil || n == 0 {
				t.Fatalf("Write = %d, %v", n, err)
			}
		}
		if b.String() != want {
			t.Errorf("in writes of %d bytes: %q, want %q", size, b.String(), want)
		}
	}
	errFull := errors.New("full")
	if _, err := (&tame{w: failing{errFull}}).Write([]byte("a")); !errors.Is(err, errFull) {
		t.Errorf("Write to what is full = %v, want %v", err, errFull)
	}
}

// failing is a writer that fails.
type failing struct{ err error }

func (f failing) Write([]byte) (int, error) { return 0, f.err }
