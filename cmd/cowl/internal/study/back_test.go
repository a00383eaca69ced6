package study

import (
	"bytes"
	"context"
	"encoding/base64"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"sync/atomic"
	"testing"

	"cowl/cmd/cowl/internal/study/readback"
	"cowl/cmd/cowl/internal/study/rows"
	"cowl/materials"
	"cowl/mesh/draft"
)

// The page of a back cowl has the words of a back, but the names that the user gave to style
// and fabric, and its pictures as they were drawn.
func TestBackPage(t *testing.T) {
	const named, cloth = "Folds above the bust + centre front", "the front crepe"
	var calls atomic.Int32
	dir := t.TempDir()
	w, out, errs := faked(dir, rows.Part{}, &calls)
	picture := []byte("\x08\x51\x40\xf0\x21\x7c") // CFFA8CF8 in base 64
	hang := w.hang
	w.hang = func(ctx context.Context, c oneCase, k int) (rows.Made[Row], error) {
		made, err := hang(ctx, c, k)
		if made.Files != nil {
			made.Files["jpg"] = picture
		}
		return made, err
	}
	spec := asked(t, "compare", 3, nil, "polyester-twill", "wool-tropical")
	s, err := spec.style()
	if err != nil {
		t.Fatal(err)
	}
	s.Name, s.Cut.Worn = named, draft.AtBack
	spec.Style = string(s.YAML())
	own, err := materials.Find("wool-tropical")
	if err != nil {
		t.Fatal(err)
	}
	own.Name, own.Title = "own-wool", cloth
	spec.Fabrics[1] = string(own.YAML())
	if err := w.study(t.Context(), spec); err != nil {
		t.Fatalf("%v, %s", err, errs)
	}
	page, err := os.ReadFile(filepath.Join(dir, "index.html"))
	if err != nil {
		t.Fatal(err)
	}
	readback.WellFormed(t, page)
	text := strings.ReplaceAll(string(page), "&#43;", "+")
	for _, want := range []string{"Which cloth? " + named, cloth, "above the blades", "the centre back",
		base64.StdEncoding.EncodeToString(picture)} {
		if !strings.Contains(text, want) {
			t.Errorf("the page lacks %q", want)
		}
	}
	rest := strings.NewReplacer(named, "", cloth, "").Replace(text)
	if said := regexp.MustCompile(`(?i)centre front|the bust|front neck point`).FindString(rest); said != "" {
		t.Errorf("the page says %q of a back", said)
	}
	if !bytes.Contains(out.Bytes(), []byte("Which cloth? "+named)) {
		t.Errorf("said %q, want the name of the style", out)
	}
}
