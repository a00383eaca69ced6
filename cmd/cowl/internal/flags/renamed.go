package flags

import (
	"errors"
	"fmt"
	"regexp"

	"github.com/alecthomas/kong"
)

// renamed are the flags that had another name once, each by that.
var renamed = map[string]string{"trim": "allowance", "weight": "cf-weight"}

var unknownFlag = regexp.MustCompile(`^unknown flag --([a-z-]+)`)

// Renamed says what a flag is called now that the parser did not know; err itself where
// it is about something else, or where the verb never had such a flag.
func Renamed(err error) error {
	var p *kong.ParseError
	words := unknownFlag.FindStringSubmatch(err.Error())
	if words == nil || !errors.As(err, &p) {
		return err
	}
	for _, f := range p.Context.Flags() {
		if old := words[1]; f.Name == renamed[old] {
			return fmt.Errorf("--%s is now called --%s", old, f.Name)
		}
	}
	return err
}
