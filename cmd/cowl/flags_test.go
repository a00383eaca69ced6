package main

import (
	"slices"
	"testing"
)

func TestJoined(t *testing.T) {
	for _, q := range []struct{ args, want []string }{
		{[]string{"drape", "--grain", "-45"}, []string{"drape", "--grain=-45"}},
		{[]string{"--grain=3", "-4"}, []string{"--grain=3", "-4"}},
		{[]string{"--json", "-q"}, []string{"--json", "-q"}},
		{[]string{"-1"}, []string{"-1"}},
	} {
		if got := joined(q.args); !slices.Equal(got, q.want) {
			t.Errorf("joined(%q) = %q, want %q", q.args, got, q.want)
		}
	}
}
