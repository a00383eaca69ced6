package sided

import (
	"html"
	"regexp"
	"slices"
	"strings"

	"cowl/mesh/draft"
)

// Names are what the user has called something; they stay as they are at every side.
type Names []string

// Say is draft.Side.Say for a text in which names stand.
func (n Names) Say(text string, s draft.Side) string {
	if s == draft.AtFront {
		return text
	}
	return n.By(s.Say, text)
}

// By says a text otherwise, but for the names in it.
func (n Names) By(say func(string) string, text string) string {
	away, back := n.hidden(say)
	return back.Replace(say(away.Replace(text)))
}

// Strings says each line of a list.
func (n Names) Strings(lines []string, s draft.Side) []string {
	var out []string
	for _, l := range lines {
		out = append(out, n.Say(l, s))
	}
	return out
}

// unsaid is what holds no words in a page: its style and its tags, and said are the words
// within a tag.
var (
	unsaid = regexp.MustCompile(`(?s)<style>.*?</style>|<[^>]*>`)
	said   = regexp.MustCompile(`\b(?:alt|title|aria-label)="[^"]*"`)
)

// HTML says the words of a page. Pictures and colours, whose letters may look like words,
// are left alone.
func (n Names) HTML(page string, s draft.Side) string {
	if s == draft.AtFront {
		return page
	}
	return Words(page, func(text string) string { return n.Say(text, s) })
}

// Words says the words of a page otherwise and leaves its tags and its style as they are.
func Words(page string, say func(string) string) string {
	var out strings.Builder
	at := 0
	for _, tag := range unsaid.FindAllStringIndex(page, -1) {
		out.WriteString(say(page[at:tag[0]]))
		out.WriteString(said.ReplaceAllStringFunc(page[tag[0]:tag[1]], say))
		at = tag[1]
	}
	out.WriteString(say(page[at:]))
	return out.String()
}

// hidden puts letters that no text has in the place of names that would be said otherwise,
// and takes them back. The longest go first: one name may hold another.
func (n Names) hidden(say func(string) string) (away, back *strings.Replacer) {
	const private = '\uE000'
	all := slices.Clone(n)
	slices.SortStableFunc(all, func(a, b string) int { return len(b) - len(a) })
	var to, from []string
	for _, name := range all {
		if say(name) == name {
			continue
		}
		escaped := html.EscapeString(name)
		for _, as := range slices.Compact([]string{name, escaped, strings.ReplaceAll(escaped, "+", "&#43;")}) {
			mark := string(rune(private + len(to)/2))
			to, from = append(to, as, mark), append(from, mark, as)
		}
	}
	return strings.NewReplacer(to...), strings.NewReplacer(from...)
}
