// Package sided says of a back cowl what reports and files say of a cowl at the front.
// They are written about the front; what leaves a verb goes through here, so that one
// table of words serves all of them. Start at [To] and [JSON].
package sided

import (
	"encoding/json"
	"io"
	"strings"

	"cowl/mesh/draft"
)

// To returns a writer that turns whole lines about a cowl at the front into those about one
// at side s.
func To(w io.Writer, s draft.Side) io.Writer {
	if s == draft.AtFront {
		return w
	}
	return writer{w, s}
}

type writer struct {
	to io.Writer
	at draft.Side
}

// Write writes lines in the words of the side.
func (w writer) Write(lines []byte) (int, error) {
	if _, err := io.WriteString(w.to, w.at.Say(string(lines))); err != nil {
		return 0, err
	}
	return len(lines), nil
}

// Strings says each line of a list.
func Strings(lines []string, s draft.Side) []string {
	var out []string
	for _, l := range lines {
		out = append(out, s.Say(l))
	}
	return out
}

// JSON returns v as it is written of a cowl worn at side s: a key with cf in it has cb,
// and so on.
func JSON(v any, s draft.Side) any {
	if s == draft.AtFront {
		return v
	}
	return keyed{v}
}

type keyed struct{ of any }

// MarshalJSON writes what it holds with the keys of a back.
func (k keyed) MarshalJSON() ([]byte, error) {
	b, err := json.Marshal(k.of)
	return []byte(Keys(string(b), draft.AtBack)), err
}

// Key is how files name the side that a cowl is worn at; empty: the front.
func Key(s draft.Side) string {
	if s == draft.AtFront {
		return ""
	}
	return s.String()
}

// Keys returns a text with the keys of files in it, as they are at side s.
func Keys(text string, s draft.Side) string {
	if s == draft.AtFront {
		return text
	}
	return backKeys.Replace(text)
}

// backKeys is the table of keys and of words that stand for values.
var backKeys = strings.NewReplacer(
	"facing_cb_mm", "facing_cf_mm", // of the plain piece
	"cf_length_mm", "cb_length_mm", "surplus_cf_mm", "surplus_cb_mm", "cf_growth_percent", "cb_growth_percent",
	"laid_cf_mm", "laid_cb_mm", "first_fold_cf_mm", "first_fold_cb_mm", `"cf_mm"`, `"cb_mm"`,
	"hem_front_mm", "hem_back_mm",
	"apex_off_mm", "blade_off_mm", "area_front_mm2", "area_back_mm2", `"above bust"`, `"above blades"`, `"below bust"`,
	`"below blades"`,
)
