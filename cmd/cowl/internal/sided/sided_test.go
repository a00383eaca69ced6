package sided

import (
	"bytes"
	"encoding/json"
	"fmt"
	"testing"

	"cowl/mesh/draft"
)

// A line and the keys of files change for a back, and stay for a front.
func TestSided(t *testing.T) {
	v := map[string]any{"cf_length_mm": 1, "cf_mm": 2, "facing_cb_mm": 3, "side_mm": 4, "zone": "above bust",
		"name": "bust"}
	for side, want := range map[draft.Side]map[string]any{
		draft.AtFront: {"cf_length_mm": 1., "cf_mm": 2., "facing_cb_mm": 3., "side_mm": 4., "zone": "above bust",
			"name": "bust"},
		draft.AtBack: {"cb_length_mm": 1., "cb_mm": 2., "facing_cf_mm": 3., "side_mm": 4., "zone": "above blades",
			"name": "bust"},
	} {
		b, err := json.MarshalIndent(JSON(v, side), "", " ")
		got := map[string]any{}
		if err == nil {
			err = json.Unmarshal(b, &got)
		}
		if err != nil || fmt.Sprint(got) != fmt.Sprint(want) {
			t.Errorf("JSON at the %v = %s, %v, want %v", side, b, err, want)
		}
	}
	var out bytes.Buffer
	if n, err := fmt.Fprintf(To(&out, draft.AtBack), "2 folds above the bust\n"); n != 23 || err != nil ||
		out.String() != "2 folds above the blades\n" {
		t.Errorf("To: %d, %v, %q", n, err, out.String())
	}
	if got := Strings([]string{"centre front", "size 10"}, draft.AtBack); fmt.Sprint(got) != "[centre back size 10]" {
		t.Errorf("Strings = %q", got)
	}
}
