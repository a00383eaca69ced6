package flags

import (
	"fmt"
	"reflect"
	"strconv"

	"github.com/alecthomas/kong"
)

// A flag of type:"count" is a whole number from its tag least to its tag most.

// countFlag reads such a flag, an int or a pointer to one.
func countFlag(ctx *kong.DecodeContext, target reflect.Value) error {
	var text string
	if err := ctx.Scan.PopValueInto("number", &text); err != nil {
		return err
	}
	least, most := bound(ctx.Value, "least"), bound(ctx.Value, "most")
	n, err := strconv.Atoi(text)
	if err != nil || n < least || n > most {
		return fmt.Errorf("%s %.40s, want a whole number of %d–%d", ctx.Value.Name, text, least, most)
	}
	if target.Kind() == reflect.Pointer {
		target.Set(reflect.ValueOf(&n))
	} else {
		target.SetInt(int64(n))
	}
	return nil
}

// bound is the number in a tag of a flag; a flag without it is our mistake.
func bound(v *kong.Value, tag string) int {
	n, err := strconv.Atoi(v.Tag.Get(tag))
	if err != nil {
		panic("cowl: flag --" + v.Name + " has no tag " + tag)
	}
	return n
}
