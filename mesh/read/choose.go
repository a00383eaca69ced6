package read

import (
	"fmt"
	"strings"

	"cowl/mesh/paper"
)

// choose returns the piece that is called which, case and hyphens aside;
// without a name the only piece there is. what it is wanted for, block or
// piece, is how the user gives the name.
func choose(pieces []paper.Piece, what, which string) (paper.Piece, error) {
	if which == "" && len(pieces) == 1 {
		return pieces[0], nil
	}
	for _, p := range pieces {
		if which != "" && spoken(p.Name) == spoken(which) {
			return p, nil
		}
	}
	if which == "" {
		return paper.Piece{}, fmt.Errorf("%d pieces, want one of them chosen by --%s-name, or name: in a style file; "+
			"there are %s", len(pieces), what, listed(pieces))
	}
	return paper.Piece{}, fmt.Errorf("%s name %.40q: no piece is called so; there are %s", what, which, listed(pieces))
}

// spoken is a name as it is compared.
func spoken(name string) string {
	return strings.Join(strings.FieldsFunc(strings.ToLower(name), func(r rune) bool {
		return r == ' ' || r == '-' || r == '_'
	}), " ")
}

// mostListed is how many pieces a message names.
const mostListed = 12

// listed names the pieces.
func listed(pieces []paper.Piece) string {
	var names []string
	for _, p := range pieces[:min(len(pieces), mostListed)] {
		names = append(names, fmt.Sprintf("%.40q", p.Name))
	}
	if more := len(pieces) - mostListed; more > 0 {
		names = append(names, fmt.Sprintf("%d more", more))
	}
	return strings.Join(names, ", ")
}
