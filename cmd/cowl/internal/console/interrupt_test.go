package console

import (
	"bytes"
	"os"
	"testing"
)

// A section that heeds its context ends by itself, however quickly it hears of it: the
// first signal does not end the program over it. Without one it does.
func TestWatchLeavesWhatHeeds(t *testing.T) {
	for _, heeds := range []bool{true, false} {
		asked := make(chan os.Signal, 1)
		asked <- os.Interrupt
		close(asked)
		end := func() {}
		if heeds {
			end = Heed()
		}
		var says bytes.Buffer
		exits := 0
		watch(asked, end, &says, func(int) { exits++ }) // the section has ended before cancel returns
		if (exits == 0) != heeds || (says.Len() == 0) != heeds {
			t.Errorf("heeding %t: %d exits, %q, want an exit only where nothing heeds", heeds, exits, says.String())
		}
	}
}
