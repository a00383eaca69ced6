package style

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"syscall"
)

// opened opens a file for reading; want says what it is to be, for messages.
func opened(path, want string) (*os.File, error) {
	info, err := os.Stat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist), errors.Is(err, syscall.ENOTDIR):
		return nil, fmt.Errorf("%s: no such file, want %s", path, want)
	case err == nil && info.IsDir():
		return nil, fmt.Errorf("%s is a folder, want %s", path, want)
	}
	return os.Open(path)
}
