package materials_test

import (
	"fmt"

	"cowl/materials"
)

func ExampleFind() {
	f, err := materials.Find("polyester-twill")
	if err != nil {
		panic(err)
	}
	fmt.Println(f)
	fmt.Printf("falls over %.1f mm, complete: %v\n", 1e3*f.GravityLength(), f.Complete())
	fmt.Println("shear", f.Basis[materials.Shear].Kind)
	// Output:
	// polyester-twill: 135.2 g/m², bend 1.95 µN·m × 0.61 µN·m, shear 23.5 N/m
	// falls over 9.9 mm, complete: true
	// shear measured
}

func ExampleParse() {
	_, err := materials.Parse("silk.yaml", []byte("name: my-silk\nweight_gsm: 7\nbend_mean_uNm: 2\n"))
	fmt.Println(err)
	f, _ := materials.Parse("silk.yaml", []byte("name: my-silk\nweight_gsm: 70\nbend_mean_uNm: 2\n"))
	fmt.Println(materials.Shear.Format(f), "–", f.Basis[materials.Shear])
	// Output:
	// silk.yaml:2: weight_gsm 7 g/m², want 10–1500 g/m²: the sheerest gauze to the heaviest coating
	// 30 N/m – assumed: default 30 N/m
}
