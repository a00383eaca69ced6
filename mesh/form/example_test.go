package form_test

import (
	"fmt"
	"log"

	"cowl/mesh/body"
	"cowl/mesh/form"

	"gonum.org/v1/gonum/spatial/r3"
)

func ExampleFromBody() {
	b, err := body.FromChart(10)
	if err != nil {
		log.Fatal(err)
	}
	f, err := form.FromBody(b)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("waist %.1f cm\n", 100*f.Girth(0))
	d, _ := f.Distance(r3.Add(f.Apex(1), r3.Vec{Z: 0.02}))
	fmt.Printf("2 cm before the apex: %.1f cm\n", 100*d)
	// Output:
	// waist 72.0 cm
	// 2 cm before the apex: 2.0 cm
}
