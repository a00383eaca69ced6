package stage_test

import (
	"fmt"

	"cowl/cmd/cowl/internal/stage"

	"gonum.org/v1/gonum/spatial/r3"
)

// The eye stands some 2 m ahead of the box, a little above its middle.
func ExampleFront() {
	box := r3.Box{Min: r3.Vec{X: -0.2, Y: 1.0, Z: -0.1}, Max: r3.Vec{X: 0.2, Y: 1.4, Z: 0.1}}
	v := stage.Front(box, 4.0/3)
	fmt.Printf("eye (%.2f, %.2f, %.2f) m, target (%.2f, %.2f, %.2f) m\n",
		v.Eye.X, v.Eye.Y, v.Eye.Z, v.Target.X, v.Target.Y, v.Target.Z)
	// Output: eye (0.00, 1.45, 1.77) m, target (0.00, 1.20, 0.00) m
}
