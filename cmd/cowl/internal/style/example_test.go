package style_test

import (
	"fmt"

	"cowl/cmd/cowl/internal/style"
)

// A style file is strict, and a message says where to look.
func ExampleParse() {
	s, err := style.Parse("blouse.yaml", []byte("name: Blouse\nbody: {size: 12}\ncut: {cowl_point_in: 1.5}\n"))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%s, size %d, cowl point %.2f cm\n", s.Name, s.Size, s.Cut.CowlPoint*100)

	_, err = style.Parse("blouse.yaml", []byte("cut:\n  cowl_point: 4\n"))
	fmt.Println(err)
	// Output:
	// Blouse, size 12, cowl point 3.81 cm
	// blouse.yaml:2: cut: key "cowl_point" has no unit, want it in the key: cowl_point_cm, cowl_point_mm or cowl_point_in
	//      2 |   cowl_point: 4
	//        |   ^
}
