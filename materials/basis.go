package materials

import (
	"fmt"
	"slices"
	"strings"
)

// Kind says how a value is known, from best to worst.
type Kind int

// The kinds of knowledge. Unknown, the zero value, is not valid in a Fabric.
const (
	Unknown  Kind = iota
	Measured      // read in a source, unit conversion included
	Derived       // computed from measured values of the same fabric by a stated rule
	Assumed       // a default or a typical figure, stated in the note
	Memory        // recalled range without a citable table
)

var kindNames = []string{"unknown", "measured", "derived", "assumed", "memory"}

// String returns the lower-case word used in fabric files.
func (k Kind) String() string {
	if k < Unknown || k > Memory {
		return fmt.Sprintf("kind(%d)", int(k))
	}
	return kindNames[k]
}

// kindFromWord is the inverse of Kind.String for the four valid kinds.
func kindFromWord(s string) (Kind, error) {
	if i := slices.Index(kindNames, s); i > 0 {
		return Kind(i), nil
	}
	return Unknown, fmt.Errorf("%.120q, want one of %s", s, strings.Join(kindNames[1:], ", "))
}

// Evidence says how one value is known: the kind and where or how.
type Evidence struct {
	Kind Kind
	How  string
}

// String returns "kind: how", the form used in fabric files.
func (e Evidence) String() string { return e.Kind.String() + ": " + e.How }

// evidenceFromText is the inverse of Evidence.String; the note may be empty.
func evidenceFromText(s string) (Evidence, error) {
	word, how, _ := strings.Cut(s, ":")
	kind, err := kindFromWord(strings.TrimSpace(word))
	return Evidence{kind, strings.TrimSpace(how)}, err
}

// Basis holds the evidence of every field, indexed by Field.
type Basis [numFields]Evidence

// Confidence grades a fabric as a whole.
type Confidence string

// The grades. High: every deciding value read in one source in clear units.
// Medium: as high, but a unit or a conversion had to be inferred, or a
// deciding value is assumed. Low: no citable table.
const (
	High   Confidence = "high"
	Medium Confidence = "medium"
	Low    Confidence = "low"
)
