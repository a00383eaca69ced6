//go:build unix

package infile

import (
	"errors"
	"io/fs"
	"net"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"
)

// What is no regular file is refused at once, by its kind; so is one that is
// too large, be it by its size or because it never ends.
func TestRefused(t *testing.T) {
	dir := t.TempDir()
	pipe, socket, large := filepath.Join(dir, "pipe"), filepath.Join(dir, "socket"), filepath.Join(dir, "large")
	if err := syscall.Mkfifo(pipe, 0o600); err != nil {
		t.Fatal(err)
	}
	l, err := net.Listen("unix", socket)
	if err != nil {
		t.Fatal(err)
	}
	defer l.Close()
	if err := errors.Join(os.WriteFile(large, nil, 0o600), os.Truncate(large, 1<<40)); err != nil {
		t.Fatal(err)
	}
	for path, says := range map[string]string{
		dir: "is a folder", pipe: "is a pipe", socket: "is a socket", "/dev/zero": "is a device",
		large:                      "is larger than 1 MB",
		filepath.Join(dir, "none"): "no such file", filepath.Join(large, "in"): "no such file",
	} {
		start := time.Now()
		_, err := Read(path, "a style file in YAML", YAML)
		if err == nil || !strings.HasPrefix(err.Error(), path) || !strings.Contains(err.Error(),
			says+", want a style file in YAML") {
			t.Errorf("Read(%s) = %v, want one that says %q and what is wanted", path, err, says)
		}
		if took := time.Since(start); took > time.Second {
			t.Errorf("Read(%s) took %v, want 1 s or less", path, took)
		}
		if gone := says == "no such file"; errors.Is(err, fs.ErrNotExist) != gone {
			t.Errorf("Read(%s) = %v is fs.ErrNotExist: %t, want %t", path, err, !gone, gone)
		}
	}
}

// A file of just the size passes, through a link too.
func TestRead(t *testing.T) {
	path := filepath.Join(t.TempDir(), "f")
	if err := errors.Join(os.WriteFile(path, make([]byte, 10), 0o600), os.Symlink(path, path+"link")); err != nil {
		t.Fatal(err)
	}
	for most, ok := range map[int64]bool{10: true, 9: false} {
		if data, err := Read(path+"link", "f", most); (err == nil) != ok || ok && len(data) != 10 {
			t.Errorf("Read of 10 bytes, at most %d = %d bytes, %v, want success %t", most, len(data), err, ok)
		}
	}
}
