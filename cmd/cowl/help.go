package main

import (
	_ "embed" // README.md
	"fmt"
	"strings"

	"cowl/cmd/cowl/internal/console"
	"cowl/materials"
	"cowl/sim"
	"cowl/sim/proof"
)

//go:embed README.md
var readme string

// topic is a text of the documents that help shows.
type topic struct {
	name, about string
	text        *string // the document
	heading     string  // its heading there; empty: the whole
}

// topics are all of them, in the order of the list.
var topics = []topic{
	{"paper", "pattern pieces, the trued front, the lay, files of your own", &readme, "Back to paper"},
	{"style", "the style file, key by key", &readme, "The style file"},
	{"flags", "all flags of draft, drape, true and lay; exit statuses", &readme, "Flags"},
	{"studies", "how many folds are laid, stop and go on, many machines", &readme, "Studies"},
	{"window", "tape, remarks, five hands and files of cowl view", &readme, "The window"},
	{"toiles", "what a ruler gives of a toile, the book, what show and fit do", &readme, "Toiles"},
	{"result", "the keys of result.json", &readme, "result.json"},
	{"fabrics", "the fabrics of the library and where they are from", &materials.Readme, ""},
	{"checks", "every check against a published figure or a closed form", &proof.Readme, ""},
	{"limits", "what the physics does not do, and what to try next", &sim.Readme, "Known limits, and what to try next"},
}

type helpCmd struct {
	Topic string `arg:"" optional:"" help:"What to read about; without it: the list."`
}

// Run prints a topic, or which there are.
func (h helpCmd) Run(c console.Console) error {
	var names []string
	for _, t := range topics {
		if t.name == h.Topic {
			fmt.Fprint(c.Out, wrapped(t.read(), 100))
			return nil
		}
		names = append(names, t.name)
	}
	if h.Topic != "" {
		return fmt.Errorf("help: topic %.40q, want one of %s; of a verb: cowl VERB --help", h.Topic,
			strings.Join(names, ", "))
	}
	fmt.Fprintln(c.Out, "Topics, each by cowl help TOPIC; of a verb: cowl VERB --help")
	for _, t := range topics {
		fmt.Fprintf(c.Out, "  %-8s  %s\n", t.name, t.about)
	}
	return nil
}

// read returns the text: from its heading to the next of that level.
func (t topic) read() string {
	if t.heading == "" {
		return *t.text
	}
	head := "\n## " + t.heading + "\n"
	_, rest, ok := strings.Cut(*t.text, head)
	if !ok {
		panic("cowl: no section " + t.heading + " in the documents")
	}
	text, _, _ := strings.Cut(rest, "\n## ")
	return strings.TrimSpace(head+text) + "\n"
}

// wrapped breaks the paragraphs of Markdown at a width of so many letters. Tables and
// what stands between fences stay as they are.
func wrapped(text string, width int) string {
	var b strings.Builder
	fenced := false
	for line := range strings.Lines(text) {
		if strings.HasPrefix(line, "```") {
			fenced = !fenced
		}
		if fenced || strings.HasPrefix(line, "|") {
			b.WriteString(line)
			continue
		}
		long := 0
		for i, word := range strings.Fields(line) {
			n := len([]rune(word))
			switch {
			case i == 0:
			case long+1+n > width:
				b.WriteByte('\n')
				long = 0
			default:
				b.WriteByte(' ')
				long++
			}
			b.WriteString(word)
			long += n
		}
		b.WriteByte('\n')
	}
	return b.String()
}
