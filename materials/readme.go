package materials

import _ "embed" // README.md

// Readme is the README.md of this package, in Markdown.
//
//go:embed README.md
var Readme string
