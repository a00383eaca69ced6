package outfile

import (
	"errors"
	"fmt"
	"hash/fnv"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"time"
)

// ours matches the names that the package gives, with host and process.
var ours = regexp.MustCompile(`^\.cowl-(new|old|journal)-([0-9a-f]{8})-([0-9]+)-[0-9a-f]{12}(-[0-9]+|-journal)?$`)

// staleAfter is when a file of another host counts as left.
const staleAfter = 24 * time.Hour

// host is a short name of this machine.
func host() string {
	name, _ := os.Hostname()
	h := fnv.New32a()
	h.Write([]byte(name))
	return fmt.Sprintf("%08x", h.Sum32())
}

// isLeft reports whether a file is one of the package whose process has ended.
func isLeft(e os.DirEntry) bool {
	m := ours.FindStringSubmatch(e.Name())
	if m == nil {
		return false
	}
	if m[2] == host() {
		pid, err := strconv.Atoi(m[3])
		return err == nil && (pid == os.Getpid() || !Alive(pid))
	}
	info, err := e.Info()
	return err == nil && time.Since(info.ModTime()) > staleAfter
}

// recoverDir ends what the journals in a folder say and sweeps the rest. The folder
// may be one that cannot be read or written: then there is nothing to be done.
func recoverDir(dir string) error {
	entries, err := os.ReadDir(dir)
	if err != nil {
		return nil // writing will say so
	}
	var errs []error
	for _, e := range entries {
		if isLeft(e) && strings.HasPrefix(e.Name(), journalPrefix) {
			errs = append(errs, resume(dir, e.Name()))
		}
	}
	if err := errors.Join(errs...); err != nil {
		return err
	}
	for _, e := range entries {
		if isLeft(e) && e.Type().IsRegular() {
			remove(filepath.Join(dir, e.Name()))
		}
	}
	return nil
}

// resume ends what a journal says, forward or back.
func resume(dir, name string) error {
	j, err := readJournal(filepath.Join(dir, name))
	if errors.Is(err, errNoJournal) {
		return nil // swept
	}
	if err != nil {
		return err
	}
	if !j.Undo {
		return j.carryOut(dir)
	}
	if err := j.backward(dir); err != nil {
		return err
	}
	j.end(dir)
	return nil
}
