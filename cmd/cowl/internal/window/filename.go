//go:build cgo

package window

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"unicode"
)

// stem is the beginning of a file's name, from the name of the style.
func stem(name string) string {
	words := strings.FieldsFunc(strings.ToLower(name), func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r)
	})
	if len(words) == 0 {
		return "style"
	}
	return strings.Join(words, "-")
}

// free returns a name in dir that is not taken: name, name-2, name-3, …
func free(dir, name string) string {
	ext := filepath.Ext(name)
	base := strings.TrimSuffix(name, ext)
	for n := 2; ; n++ {
		if _, err := os.Stat(filepath.Join(dir, name)); errors.Is(err, os.ErrNotExist) || n > 9999 {
			return name
		}
		name = fmt.Sprintf("%s-%d%s", base, n, ext)
	}
}
