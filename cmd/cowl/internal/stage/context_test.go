//go:build cgo

package stage

import (
	"errors"
	"os"
	"strings"
	"testing"
)

// A hidden window draws what EGL draws. It needs a display: run the tests
// under xvfb-run to include it.
func TestHiddenWindowMatchesEGL(t *testing.T) {
	if os.Getenv("DISPLAY") == "" {
		t.Skip("no display; run under xvfb-run to include the hidden window")
	}
	st := newStage(t)
	window, err := start(openHidden)
	if err != nil {
		t.Fatal(err)
	}
	defer window.Close()
	s := testScene(12)
	v := Front(bodiceBox(s), 1)
	if mean, far := difference(draw1(t, st, s, v), draw1(t, window, s, v)); mean > 0.1 || far > 0.001 {
		t.Errorf("window and EGL differ by %v on average, clearly in %v of channels", mean, far)
	}
}

func TestHiddenWindowWithoutDisplay(t *testing.T) {
	t.Setenv("DISPLAY", "")
	if _, err := start(openHidden); err == nil || !strings.Contains(err.Error(), "DISPLAY") {
		t.Errorf("openHidden without a display gave %v, want an error that names DISPLAY", err)
	}
}

func TestStartPassesTheReasonOn(t *testing.T) {
	want := errors.New("no driver")
	if _, err := start(func() (func(), error) { return nil, want }); !errors.Is(err, want) {
		t.Errorf("start gave %v, want %v", err, want)
	}
}
