package outfile

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"syscall"
)

// hook is asked before every change of the file system; an error fails it. For tests.
var hook func(op, path string) error

// call does one change.
func call(op, path string, do func() error) error {
	if hook != nil {
		if err := hook(op, path); err != nil {
			return &fs.PathError{Op: op, Path: path, Err: err}
		}
	}
	return do()
}

// write makes a file that is not there yet, and syncs it.
func write(path string, data []byte) (err error) {
	var f *os.File
	err = call("create", path, func() (err error) {
		f, err = os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
		return err
	})
	if err != nil {
		return err
	}
	half := len(data) / 2
	for _, part := range [][]byte{data[:half], data[half:]} {
		if err == nil {
			err = call("write", path, func() error { _, err := f.Write(part); return err })
		}
	}
	if err == nil {
		err = call("sync", path, f.Sync)
	}
	return errors.Join(err, f.Close())
}

func rename(from, to string) error {
	return call("rename", to, func() error { return os.Rename(from, to) })
}

// remove takes a file away, if it is there.
func remove(path string) error {
	return call("remove", path, func() error {
		if err := os.Remove(path); !errors.Is(err, fs.ErrNotExist) {
			return err
		}
		return nil
	})
}

// double gives a file a second name: by a link, or where the file system has none by
// a synced copy.
func double(from, to string) error {
	err := call("link", to, func() error { return os.Link(from, to) })
	if err == nil || errors.Is(err, fs.ErrNotExist) {
		return err
	}
	f, err := os.Open(from)
	if err != nil {
		return err
	}
	defer f.Close()
	data, err := io.ReadAll(f)
	if err != nil {
		return err
	}
	return write(to, data)
}

// syncDir has the names of a folder written down. Some file systems cannot, and need not.
func syncDir(dir string) error {
	return call("sync folder", dir, func() error {
		f, err := os.Open(dir)
		if err != nil {
			return err
		}
		err = f.Sync()
		f.Close()
		if errors.Is(err, syscall.EINVAL) || errors.Is(err, errors.ErrUnsupported) || errors.Is(err, fs.ErrPermission) {
			return nil
		}
		return err
	})
}

// syncDirs syncs the folders that files lie in, and dir.
func syncDirs(dir string, names []string) error {
	done := map[string]bool{}
	for _, n := range append(names, "x") {
		d := filepath.Dir(filepath.Join(dir, n))
		if done[d] {
			continue
		}
		done[d] = true
		if err := syncDir(d); err != nil {
			return err
		}
	}
	return nil
}
