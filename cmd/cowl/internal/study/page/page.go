// Package page makes the sheet of a study: one HTML file that needs nothing
// but itself. Style, charts and pictures are inside; there is no script and no
// link to outside. It is made to be read on a screen or a phone and to be
// printed on A4 or Letter and pinned on the wall. Start at Page.
package page

import (
	"bytes"
	_ "embed"
	"encoding/base64"
	"fmt"
	"html/template"
)

// Page is one sheet.
type Page struct {
	Title    string
	Lead     string   // what was asked, in a sentence
	Findings []string // what came out, the first the most important
	Facts    []Fact   // what was held fixed
	Blocks   []Block
	Cautions []string
	Foot     string // how to make the sheet again
}

// Fact is a name and what it was.
type Fact struct{ Name, Value string }

// Block is one part of a sheet. Parts that are empty are left out.
type Block struct {
	Heading string
	Text    []string // paragraphs
	Aside   Chart    // small, beside the paragraphs
	Charts  []Chart  // side by side where there is room
	Table   *Table
	Cards   []Card
	List    []Answer // numbered
	NewPage bool     // on paper it begins a page
	Dense   bool     // small pictures, as many in a row as fit
}

// Table is set with its first column to the left and numbers to the right.
type Table struct {
	Head []string
	Rows []TableRow
	Note string
	// Words sets the last column to the left: it holds words.
	Words bool
}

// TableRow is one line of a table; Marked lines stand out.
type TableRow struct {
	Cells  []string
	Marked bool
}

// Card is a picture with words under it.
type Card struct {
	Picture []byte // JPEG; empty: Missing says why
	Drawing Chart  // in place of the picture
	Title   string
	Lines   []string
	Missing string
}

// Answer is a numbered item, with a bold first part.
type Answer struct{ Bold, Text string }

// Chart is a drawing that becomes SVG.
type Chart interface{ SVG() string }

//go:embed page.html
var pageHTML string

//go:embed page.css
var pageCSS string

var page = template.Must(template.New("page").Funcs(template.FuncMap{
	"css": func() template.CSS { return template.CSS(pageCSS) },
	// What charts write is escaped by themselves.
	"svg": func(c Chart) template.HTML { return template.HTML(c.SVG()) },
	"jpeg": func(b []byte) template.URL {
		return template.URL("data:image/jpeg;base64," + base64.StdEncoding.EncodeToString(b))
	},
	"first": func(i int) bool { return i == 0 },
}).Parse(pageHTML))

// HTML returns the sheet. The same page gives the same bytes.
func (p Page) HTML() ([]byte, error) {
	for _, b := range p.Blocks {
		if b.Table == nil {
			continue
		}
		for i, r := range b.Table.Rows {
			if len(r.Cells) != len(b.Table.Head) {
				panic(fmt.Sprintf("page: %s: row %d has %d cells under %d heads", b.Heading, i, len(r.Cells), len(b.Table.Head)))
			}
		}
	}
	var out bytes.Buffer
	err := page.Execute(&out, p)
	return out.Bytes(), err
}
