package panel

import "slices"

// Key is a key that controls listen to; letters arrive as typed text and, for
// shortcuts, as KeyA + n.
type Key int

// The keys.
const (
	KeyNone Key = iota
	KeyTab
	KeyEnter
	KeyEscape
	KeySpace
	KeyLeft
	KeyRight
	KeyUp
	KeyDown
	KeyHome
	KeyEnd
	KeyPageUp
	KeyPageDown
	KeyBackspace
	KeyDelete
	KeyPlus
	KeyMinus
	KeyF1
	KeyF9
	KeyF10
	KeyF11
	Key0   // to Key0 + 9
	Key9   = Key0 + 9
	KeyA   = Key9 + 1
	KeyZ   = KeyA + 25
	keyEnd = KeyZ + 1
)

// Letter returns the key of a lower-case letter.
func Letter(r rune) Key { return KeyA + Key(r-'a') }

// Mods are the keys held along with another.
type Mods struct{ Shift, Ctrl, Alt bool }

// Press is a key that went down, or repeated.
type Press struct {
	Key  Key
	Mods Mods
}

// Kind says what an Event is.
type Kind int

// The kinds of events.
const (
	Moved   Kind = iota // to X, Y
	Down                // a mouse button
	Up                  // a mouse button
	Wheeled             // X, Y steps
	Typed               // Rune
	Pressed             // Press
)

// Mouse buttons.
const (
	LeftButton = iota
	RightButton
	MiddleButton
	buttons
)

// Event is one thing that mouse or keyboard did.
type Event struct {
	Kind   Kind
	X, Y   float64 // pixels of the window; wheel steps of a Wheeled
	Button int
	Rune   rune
	Press  Press
	Mods   Mods // held
}

// writes reports whether a press types something where there is a field to type in.
func (p Press) writes() bool {
	plain := p.Key == KeySpace || p.Key == KeyPlus || p.Key == KeyMinus || p.Key >= Key0 && p.Key < keyEnd
	return plain && !p.Mods.Ctrl && !p.Mods.Alt
}

// sends reports whether what comes after a press may belong elsewhere: a field is
// left or entered, a sheet opened.
func (p Press) sends() bool {
	command := p.Mods.Ctrl && p.Key >= Key0 && p.Key < keyEnd
	return p.Key == KeyEnter || p.Key == KeyTab || p.Key == KeyEscape || p.Key == KeyF1 || command
}

// Input is what happened since the last picture. Mouse buttons change at most
// once a picture, so that a click is not lost however slowly pictures come; so do
// the keys that send others elsewhere.
type Input struct {
	X, Y    float64 // units
	DX, DY  float64 // units moved, after the press where a button went down
	Wheel   float64
	Down    [buttons]bool // held now
	Struck  [buttons]bool // went down
	Freed   [buttons]bool // went up
	Double  bool          // the strike is the second of a double click
	Keys    []Press
	Text    []rune
	Mods    Mods
	Present bool // the mouse is over the window

	queue []Event
	last  [2]float64 // place of the last strike, units
	count int        // strikes at one place
	when  float64    // s, of the last strike
}

// Post adds an event.
func (in *Input) Post(e Event) { in.queue = append(in.queue, e) }

// Waiting reports whether events are left for the next picture.
func (in *Input) Waiting() bool { return len(in.queue) > 0 }

// doubleTime is the longest pause within a double click, s.
const doubleTime = 0.35

// later reports whether an event is left for the next picture, so that what came
// before it is answered first: buttons after keys, letters after keys that edit.
func (in *Input) later(e Event) bool {
	switch e.Kind {
	case Down, Up:
		return len(in.Keys)+len(in.Text) > 0
	case Typed:
	case Pressed:
		if !e.Press.writes() {
			return false
		}
	default:
		return false
	}
	return slices.ContainsFunc(in.Keys, func(p Press) bool { return !p.writes() })
}

// take moves events out of the queue, up to and with the first change of a
// button or the first key that sends others elsewhere; now is in s.
func (in *Input) take(scale, now float64) {
	x, y := in.X, in.Y
	in.Wheel, in.Keys, in.Text, in.Double = 0, in.Keys[:0], in.Text[:0], false
	in.Struck, in.Freed = [buttons]bool{}, [buttons]bool{}
	n := 0
	for changed := false; n < len(in.queue) && !changed; n++ {
		e := in.queue[n]
		if in.later(e) {
			break
		}
		in.Mods = e.Mods
		switch e.Kind {
		case Moved:
			in.X, in.Y, in.Present = e.X/scale, e.Y/scale, true
		case Down:
			if in.Down == [buttons]bool{} {
				x, y = in.X, in.Y // nothing was dragged on the way here
			}
			in.Down[e.Button], in.Struck[e.Button], changed = true, true, true
			in.strike(now)
		case Up:
			in.Down[e.Button], in.Freed[e.Button], changed = false, true, true
		case Wheeled:
			in.Wheel += e.Y
		case Typed:
			in.Text = append(in.Text, e.Rune)
		case Pressed:
			in.Keys = append(in.Keys, e.Press)
			changed = e.Press.sends()
		}
	}
	in.queue = in.queue[:copy(in.queue, in.queue[n:])]
	in.DX, in.DY = in.X-x, in.Y-y
}

// strike finds double clicks.
func (in *Input) strike(now float64) {
	near := (in.X-in.last[0])*(in.X-in.last[0])+(in.Y-in.last[1])*(in.Y-in.last[1]) < 25
	in.count++
	if !near || now-in.when > doubleTime {
		in.count = 1
	}
	in.Double = in.count == 2
	in.last, in.when = [2]float64{in.X, in.Y}, now
}

// Took reports whether a key was pressed with exactly these modifiers, and
// takes it, so that nothing else answers to it.
func (in *Input) Took(k Key, m Mods) bool {
	for i, p := range in.Keys {
		if p.Key == k && p.Mods == m {
			in.Keys = append(in.Keys[:i], in.Keys[i+1:]...)
			return true
		}
	}
	return false
}
