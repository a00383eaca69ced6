//go:build !linux

package window

// giveWay does nothing here: threads have no priority of their own.
func giveWay() {}
