//go:build !race

package read_test

const slower = 1
