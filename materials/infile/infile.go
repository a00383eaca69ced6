// Package infile reads the files that a user names. A file that is no file (a
// folder, a pipe, a device) is refused at once and by its kind, since reading
// one may never end, and so is one larger than any of its sort. Whatever cowl
// reads goes through it. Start at Read.
package infile

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"syscall"
)

// The most that files of a sort may hold, bytes. Real ones hold a hundredth.
const (
	YAML    = 1 << 20  // styles, fabrics, sheets of tests
	JSON    = 8 << 20  // study.json, which holds a style and fabrics; the row of a study
	Picture = 16 << 20 // that a study has drawn
)

// Read returns what is in a file of at most most bytes. Want says what it is to
// be, for messages: "a style file in YAML". That a file is not there is an
// fs.ErrNotExist.
func Read(path, want string, most int64) ([]byte, error) {
	f, err := Open(path, want)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	data, err := io.ReadAll(io.LimitReader(f, most+1))
	if err != nil {
		return nil, err
	}
	if int64(len(data)) > most {
		return nil, fmt.Errorf("%s is larger than %d MB, want %s", path, most>>20, want)
	}
	return data, nil
}

// Open opens a regular file for reading, as Read does.
func Open(path, want string) (*os.File, error) {
	info, err := os.Stat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist), errors.Is(err, syscall.ENOTDIR):
		return nil, &missing{path, want}
	case err != nil:
		return nil, err
	case !info.Mode().IsRegular():
		return nil, fmt.Errorf("%s is %s, want %s", path, kind(info.Mode()), want)
	}
	return os.Open(path)
}

// kind is what a file is that is none.
func kind(m fs.FileMode) string {
	switch {
	case m.IsDir():
		return "a folder"
	case m&fs.ModeNamedPipe != 0:
		return "a pipe"
	case m&fs.ModeSocket != 0:
		return "a socket"
	case m&fs.ModeDevice != 0:
		return "a device"
	}
	return "no regular file"
}

// missing is a file that is not there.
type missing struct{ path, want string }

func (m *missing) Error() string { return fmt.Sprintf("%s: no such file, want %s", m.path, m.want) }

// Is makes it an fs.ErrNotExist.
func (m *missing) Is(target error) bool { return target == fs.ErrNotExist }
