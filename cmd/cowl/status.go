package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"strings"
)

// How cowl ends.
const (
	exitOK         = 0
	exitNotSettled = 1
	exitBadInput   = 2
	exitCannotSave = 3
	exitNoWindow   = 4
	exitFault      = 70 // as EX_SOFTWARE of sysexits.h
	exitCancelled  = 130
)

// exits says what the statuses mean, in help and README alike.
var exits = []struct {
	code  int
	means string
}{
	{exitOK, "done"},
	{exitNotSettled, "a drape did not settle or gave no result, or what was sought was missed; everything is written and says so"},
	{exitBadInput, "bad input: a message names field, value, allowed range and line; nothing is written"},
	{exitCannotSave, "cannot save, or standard output cannot be written"},
	{exitNoWindow, "no window can be opened"},
	{exitFault, "a fault of the program: a message says where the report lies"},
	{exitCancelled, "cancelled with Ctrl-C or SIGTERM; finished rows of a study are kept, nothing else is written"},
}

// exitHelp is the table for the help; lines that begin with a blank stay as they are.
func exitHelp() string {
	var b strings.Builder
	b.WriteString("Exit status:\n\n")
	for _, e := range exits {
		fmt.Fprintf(&b, "  %3d  %s\n", e.code, e.means)
	}
	return b.String()
}

// Kinds of errors that are not bad input.
var (
	errCannotSave = errors.New("cannot save")
	errNoResult   = errors.New("the drape could not be computed")
	errNoWindow   = errors.New("no window can be opened")
)

// silent is an error whose message has been printed already.
type silent struct{ code int }

func (s silent) Error() string { return fmt.Sprintf("exit %d", s.code) }

// status prints err and returns the exit status it stands for.
func status(err error, stderr io.Writer) int {
	var quiet silent
	switch {
	case err == nil:
		return exitOK
	case errors.As(err, &quiet):
		return quiet.code
	case errors.Is(err, context.Canceled):
		fmt.Fprintln(stderr, "cowl: cancelled, nothing written")
		return exitCancelled
	}
	fmt.Fprintf(stderr, "cowl: %v\n", err)
	switch {
	case errors.Is(err, errCannotSave):
		return exitCannotSave
	case errors.Is(err, errNoWindow):
		return exitNoWindow
	case errors.Is(err, errNoResult):
		return exitNotSettled
	}
	return exitBadInput
}
