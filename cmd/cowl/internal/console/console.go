// Package console is what a verb of the program talks through: standard output and
// error tamed, progress, JSON, what is saved, how the program ends. Start at [Console].
package console

import "io"

// Console is what a verb may write to.
type Console struct{ Out, Err io.Writer }
