package console

import (
	"context"
	"errors"
	"fmt"
	"io"
	"strings"

	"cowl/mesh/limit"
	"cowl/mesh/ruler"
)

// How cowl ends.
const (
	ExitOK         = 0
	ExitNotSettled = 1
	ExitBadInput   = 2
	ExitCannotSave = 3
	ExitNoWindow   = 4
	ExitFault      = 70 // as EX_SOFTWARE of sysexits.h
	ExitCancelled  = 130
)

// Exits says what the statuses mean, in help and README alike.
var Exits = []struct {
	Code  int
	Means string
}{
	{ExitOK, "done"},
	{ExitNotSettled, "a drape did not settle or gave no result, what was sought was missed, or pieces do not fit the " +
		"cloth; everything is written and says so"},
	{ExitBadInput, "bad input: a message names field, value, allowed range and line; nothing is written"},
	{ExitCannotSave, "cannot save, or standard output cannot be written"},
	{ExitNoWindow, "no window can be opened"},
	{ExitFault, "a fault of the program: a message says where the report lies"},
	{ExitCancelled, "cancelled with Ctrl-C or SIGTERM; finished rows of a study are kept, nothing else is written"},
}

// ExitHelp is the table for the help; lines that begin with a blank stay as they are.
func ExitHelp() string {
	var b strings.Builder
	b.WriteString("Exit status:\n\n")
	for _, e := range Exits {
		fmt.Fprintf(&b, "  %3d  %s\n", e.Code, e.Means)
	}
	return b.String()
}

// Kinds of errors that are not bad input.
var (
	ErrCannotSave = errors.New("cannot save")
	ErrNoResult   = errors.New("the drape could not be computed")
	ErrNoWindow   = errors.New("no window can be opened")
)

// Silent is an error whose message has been printed already.
type Silent struct{ Code int }

// Error names the exit status.
func (s Silent) Error() string { return fmt.Sprintf("exit %d", s.Code) }

// Status prints err and returns the exit status it stands for.
func Status(err error, stderr io.Writer) int {
	var quiet Silent
	switch {
	case err == nil:
		return ExitOK
	case errors.As(err, &quiet):
		return quiet.Code
	case errors.Is(err, context.Canceled):
		fmt.Fprintln(stderr, "cowl: cancelled, nothing written")
		return ExitCancelled
	}
	fmt.Fprintf(stderr, "cowl: %s\n", limit.In(err, ruler.Spoken().Limit()))
	switch {
	case errors.Is(err, ErrCannotSave):
		return ExitCannotSave
	case errors.Is(err, ErrNoWindow):
		return ExitNoWindow
	case errors.Is(err, ErrNoResult):
		return ExitNotSettled
	}
	return ExitBadInput
}
