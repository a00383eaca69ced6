package measure

import (
	"encoding/json"
	"strconv"

	"cowl/sim/drape"
)

// JSON writes an outcome as result.json has it, and after it the fields of
// more, a struct.
func JSON(o *drape.Outcome, more any) ([]byte, error) {
	var all object
	for _, f := range All {
		if v := f.inFile(o); v != nil && !f.Hidden {
			all = append(all, entry{f.Key, v})
		}
	}
	head, err := all.MarshalJSON()
	if err != nil || more == nil {
		return head, err
	}
	rest, err := json.Marshal(more)
	if err != nil || len(rest) <= len("{}") {
		return head, err
	}
	return append(append(head[:len(head)-1], ','), rest[1:]...), nil
}

// inFile is what result.json holds of a figure; nil: nothing.
func (f *Figure) inFile(o *drape.Outcome) any {
	switch {
	case f.Raw != nil:
		return f.Raw(o)
	case f.Over != nil:
		return f.Value(o)
	case f.Each != nil:
		return f.inEach(f.Each(o))
	}
	return f.In(f.Of(o))
}

// object is a JSON object whose keys keep their order.
type object []entry

type entry struct {
	key   string
	value any
}

// MarshalJSON writes the object.
func (o object) MarshalJSON() ([]byte, error) {
	b := []byte{'{'}
	for i, e := range o {
		if i > 0 {
			b = append(b, ',')
		}
		v, err := json.Marshal(e.value)
		if err != nil {
			return nil, err
		}
		b = append(append(strconv.AppendQuote(b, e.key), ':'), v...)
	}
	return append(b, '}'), nil
}
