package sided

import (
	"testing"

	"cowl/mesh/draft"
)

// Names stay, whole and within each other, as they are and as a page writes them; the words
// beside them, pictures and colours are those of a back.
func TestNames(t *testing.T) {
	names := Names{"Over the bust", "Over the bust & CF+", "plain"}
	for text, want := range map[string]string{
		"Over the bust: 2 folds above the bust, CF 3 cm": "Over the bust: 2 folds above the blades, CB 3 cm",
		"Over the bust & CF+ at the centre front":        "Over the bust & CF+ at the centre back",
	} {
		if got := names.Say(text, draft.AtBack); got != want {
			t.Errorf("Say(%q) = %q, want %q", text, got, want)
		}
		if got := names.Say(text, draft.AtFront); got != text {
			t.Errorf("Say(%q) at the front = %q, want it as it was", text, got)
		}
	}
	const head = `<style>p{color:#CF0000}</style><h1>Over the bust &amp; CF&#43;</h1>`
	page := head + `<img alt="the front" src="data:,CFCF"><p>CF</p>`
	want := head + `<img alt="the back" src="data:,CFCF"><p>CB</p>`
	if got := names.HTML(page, draft.AtBack); got != want {
		t.Errorf("HTML = %s, want %s", got, want)
	}
}
