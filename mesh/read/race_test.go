//go:build race

package read_test

// slower is how much slower all runs under the race detector.
const slower = 10
