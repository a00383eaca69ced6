package console

import "encoding/json"

// PrintJSON prints v as the one object on standard output.
func (c Console) PrintJSON(v any) error {
	b, err := JSON(v)
	if err == nil {
		_, err = c.Out.Write(b)
	}
	return err
}

// JSON writes v for people and programs alike. What cannot be written, a figure
// that is no number, is a fault of ours.
func JSON(v any) ([]byte, error) {
	b, err := json.MarshalIndent(v, "", "  ")
	if err != nil {
		panic("the figures cannot be written\n" + err.Error())
	}
	return append(b, '\n'), nil
}
