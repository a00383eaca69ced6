module cowl

go 1.26.8

require (
	codeberg.org/go-pdf/fpdf v0.11.1
	github.com/alecthomas/kong v1.17.0
	github.com/go-gl/gl v0.0.0-20231021071112-07e5d0ea2e71
	github.com/go-gl/glfw/v3.3/glfw v0.0.0-20260823155953-d41da22a9587
	github.com/goccy/go-yaml v1.19.2
	github.com/google/go-cmp v0.7.0
	golang.org/x/image v0.48.0
	golang.org/x/term v0.44.0
	gonum.org/v1/gonum v0.17.0
	pgregory.net/rapid v1.3.0
)

require (
	golang.org/x/sys v0.50.0 // indirect
	golang.org/x/text v0.44.0 // indirect
)
