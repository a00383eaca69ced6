package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/outfile"
	"cowl/cmd/cowl/internal/say"
	"cowl/materials/infile"
	"cowl/mesh/ruler"

	"github.com/goccy/go-yaml"
)

// unitFlag sets the unit of lengths in all that is written for people.
type unitFlag struct {
	Unit string `enum:",inch,cm" default:"" placeholder:"UNIT" help:"Lengths in reports, patterns and sheets: inch or cm. Kept for later runs, in cowl/unit.yaml of your config folder; --unit cm goes back. JSON and tables keep their units."`
}

// unitFile is where the unit is kept, in the config folder of the user.
const unitFile = "unit.yaml"

// unitNames are the units by their names on the command line and in the file.
var unitNames = map[string]ruler.Units{"cm": ruler.Centimetres, "inch": ruler.Inches}

// configFolder is the folder of cowl in the config folder of the user.
func configFolder() (string, error) {
	dir, err := os.UserConfigDir()
	return filepath.Join(dir, "cowl"), err
}

// keptUnit is the unit that was kept, cm where none was. A file that cannot be read is an
// error beside cm.
func keptUnit() (ruler.Units, error) {
	dir, err := configFolder()
	if err != nil {
		return ruler.Centimetres, nil // no folder: nothing can have been kept
	}
	path := filepath.Join(dir, unitFile)
	data, err := infile.Read(path, "the unit of lengths", infile.YAML)
	if errors.Is(err, fs.ErrNotExist) {
		return ruler.Centimetres, nil
	}
	var file struct{ Unit string }
	if err == nil {
		err = yaml.Unmarshal(data, &file)
	}
	if err != nil {
		return ruler.Centimetres, fmt.Errorf("%s cannot be read, so lengths are in cm; --unit writes it anew: %s", path,
			say.FirstLine(err.Error()))
	}
	if u, ok := unitNames[file.Unit]; ok {
		return u, nil
	}
	return ruler.Centimetres, fmt.Errorf("%s: unit %.20q, want inch or cm; lengths are in cm, and --unit writes it anew",
		path, file.Unit)
}

// speak sets the unit of all that this run says: the one of the flag, which is kept, else
// the one that was kept. What goes wrong with the file is told and ends nothing.
func (f unitFlag) speak(c console.Console) {
	kept, err := keptUnit()
	u, given := unitNames[f.Unit]
	if !given {
		u = kept
	}
	ruler.Speak(u)
	if given && (u != kept || err != nil) {
		err = keepUnit(f.Unit)
	}
	if err != nil {
		fmt.Fprintf(c.Err, "cowl: %s\n", err)
	}
}

// keepUnit writes the file, whole or not at all.
func keepUnit(name string) error {
	dir, err := configFolder()
	if err == nil {
		err = os.MkdirAll(dir, 0o700)
	}
	if err == nil {
		text := "# Unit of lengths in what cowl writes for people. Another: cowl draft --unit cm, or without this " +
			"file.\nunit: " + name + "\n"
		err = outfile.Write(filepath.Join(dir, unitFile), []byte(text))
	}
	if err != nil {
		return fmt.Errorf("--unit %s holds for this run alone, it cannot be kept: %w", name, err)
	}
	return nil
}
