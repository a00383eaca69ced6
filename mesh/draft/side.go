package draft

import (
	"fmt"
	"strconv"
	"strings"

	"cowl/mesh/limit"
)

// Side is where a piece is worn. All lines are of the half at X above 0 as one looks at
// the wearer: at the front that is the wearer's left half, at the back the right.
type Side int

// The sides.
const (
	AtFront Side = iota
	AtBack
)

// String returns the name used on the command line.
func (s Side) String() string {
	switch s {
	case AtFront:
		return "front"
	case AtBack:
		return "back"
	}
	return fmt.Sprintf("Side(%d)", int(s))
}

// ParseSide returns the Side of a name that String gives.
func ParseSide(name string) (Side, error) {
	for _, s := range []Side{AtFront, AtBack} {
		if s.String() == name {
			return s, nil
		}
	}
	return AtFront, limit.Errorf("side", "side %s, want front or back", strconv.Quote(name))
}

// Other returns the other side.
func (s Side) Other() Side { return AtBack - s }

// Centre is what the line X = 0 is called.
func (s Side) Centre() string { return "centre " + s.String() }

// Halves are what the halves at X above and below 0 are called, by the wearer.
func (s Side) Halves() (above, below string) {
	if s == AtBack {
		return "right", "left"
	}
	return "left", "right"
}

// frontFirst puts a figure of a cowl worn at s and that of its plain piece in order.
func (s Side) frontFirst(cowl, plain float64) (front, back float64) {
	if s == AtBack {
		return plain, cowl
	}
	return cowl, plain
}

// Say turns words about a cowl at the front into those about one at side s.
func (s Side) Say(text string) string {
	if s == AtFront {
		return text
	}
	return atBack.Replace(text)
}

// atBack is the table of words: of the front, and what is said of the back in their place.
var atBack = strings.NewReplacer(
	"centre front", "centre back", "Centre front", "Centre back",
	"the front neck point", "the nape", "front neck point", "nape", "bust point", "blade point", "apex (bust point)",
	"blade point (end of the back dart)", "apex", "blade point", "Apex", "Blade point",
	"above the bust", "above the blades", "below the bust", "below the blades", "over the bust", "over the blades",
	"above bust", "above blades", "below bust", "below blades", "front shoulder seam", "back shoulder seam",
	"wearer's left", "wearer's right", "wearer's right", "wearer's left",
	"round the back shoulder", "round the front shoulder", "also runs forward", "also runs backward", "← forward",
	"← backward",
	"ahead of the form", "behind the form", "CF", "CB", "cf neck", "nape", "cf waist", "cb waist",
	"the front", "the back", "The front", "The back", "cowl front", "cowl back", "Cowl front", "Cowl back", "half front",
	"half back", "the chest", "the back",
)
