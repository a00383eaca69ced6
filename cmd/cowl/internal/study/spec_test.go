package study

import (
	"errors"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"sync/atomic"
	"testing"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/study/rows"
)

// A study.json that no verb has written is refused.
func TestAskChecked(t *testing.T) {
	good := asked(t, "sweep", 3, []string{"folds=1,2"})
	for _, q := range []struct {
		want  string
		wrong func(a *Spec)
	}{
		{"", func(*Spec) {}}, {"verb", func(a *Spec) { a.Verb = "hem" }}, {"quantities to vary",
			func(a *Spec) { a.Vary = nil }},
		{"placings", func(a *Spec) { a.Placings = 2e9 }}, {"placings", func(a *Spec) { a.Placings = 0 }},
		{"placings 3 in the style", func(a *Spec) { a.Placings = 4 }},
		{"fabrics", func(a *Spec) { a.Verb, a.Vary = "compare", nil }}, {"fabrics",
			func(a *Spec) { a.Fabrics = make([]string, 100) }}, {"files", func(a *Spec) { a.Written = manyFiles(1e5) }},
	} {
		dir, a := t.TempDir(), good
		q.wrong(&a)
		text, err := console.JSON(a)
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(dir, specFile), text, 0o600); err != nil {
			t.Fatal(err)
		}
		w, _, _ := faked(dir, rows.Part{}, new(atomic.Int32))
		err = w.gather([]string{dir})
		if refused := !errors.As(err, new(console.Silent)); refused != (q.want != "") ||
			!strings.Contains(err.Error(), q.want) {
			t.Errorf("gather of %+v = %v, want %q", a, err, q.want)
		}
	}
}

// manyFiles makes up n names.
func manyFiles(n int) map[string]string {
	out := map[string]string{}
	for i := range n {
		out[strconv.Itoa(i)] = ""
	}
	return out
}
