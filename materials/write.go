package materials

import (
	"fmt"
	"strconv"
	"strings"
)

// headTexts is how many of texts stand above the numbers in a file.
const headTexts = 4

// YAML returns f as a fabric file that Parse reads back: words, numbers in the
// units of their keys to 12 figures, the drape test, ranges and spreads, the basis
// of every value.
// The order is fixed, so equal fabrics give equal bytes.
func (f Fabric) YAML() []byte {
	var b strings.Builder
	for _, t := range texts[:headTexts] {
		writeText(&b, "", t.key, *t.at(&f))
	}
	for _, q := range Fields() {
		fmt.Fprintf(&b, "%s: %s\n", q.Key(), figures(q.InUnits(f)))
	}
	if f.Drape != nil {
		writeDrape(&b, f)
	}
	writeLimits(&b, f)
	writeLook(&b, f)
	b.WriteString("basis:\n")
	for _, q := range Fields() {
		writeText(&b, "  ", q.Key(), f.Basis[q].String())
	}
	for _, t := range texts[headTexts:] {
		writeText(&b, "", t.key, *t.at(&f))
	}
	return []byte(b.String())
}

// writeText writes a quoted value; JSON-style quoting is valid YAML. An empty
// value is left out.
func writeText(b *strings.Builder, indent, key, value string) {
	if value != "" {
		fmt.Fprintf(b, "%s%s: %s\n", indent, key, strconv.Quote(value))
	}
}

// writeDrape writes the drape test; what is unknown is left out.
func writeDrape(b *strings.Builder, f Fabric) {
	b.WriteString("drape:\n")
	for _, q := range drapeQuantities {
		if v := q.inUnits(&f); v != 0 {
			fmt.Fprintf(b, "  %s: %s\n", q.key, figures(v))
		}
	}
	writeText(b, "  ", "note", f.Drape.Note)
}
