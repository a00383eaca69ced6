package window

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"time"

	"cowl/cmd/cowl/internal/outfile"
	"cowl/materials/infile"

	"github.com/goccy/go-yaml"
)

// Settings are what a user sets once. They lie in the user's config folder and
// hold nothing of a style.
type Settings struct {
	Units  Units                      `yaml:"units"`
	Scale  float64                    `yaml:"scale"`  // 0: that of the display; 1: 100 %, 2: 200 %
	Large  bool                       `yaml:"large"`  // letters for a projector
	Folder string                     `yaml:"folder"` // where files are saved to
	Wide   int                        `yaml:"wide"`   // pixels of the window
	Tall   int                        `yaml:"tall"`
	Fine   bool                       `yaml:"fine"`   // soft shadows when the cloth is at rest
	Sides  struct{ Left, Right Side } `yaml:"sides"`  // the panels beside the view
	Recent []string                   `yaml:"recent"` // paths used last, the newest first
	Asked  time.Time                  `yaml:"asked"`  // of the newest style on the shelf that was offered
}

// Side is a panel beside the view.
type Side struct {
	Wide float64 `yaml:"wide"` // units; 0: by the width of the window
	Away bool    `yaml:"away"`
}

const settingsFile = "window.yaml"

// defaults are the settings of the first start.
func defaults() Settings {
	return Settings{Units: Centimetres, Folder: "cowl-out", Wide: 1280, Tall: 800, Fine: true}
}

// configFolder is where cowl keeps its settings.
func configFolder() (string, error) {
	dir, err := os.UserConfigDir()
	return filepath.Join(dir, "cowl"), err
}

// loadSettings reads the settings; what is missing or out of range is as at the
// first start. A file that cannot be read is an error beside usable settings.
func loadSettings(dir string) (Settings, error) {
	s := defaults()
	data, err := infile.Read(filepath.Join(dir, settingsFile), "the settings of the window", infile.YAML)
	if errors.Is(err, fs.ErrNotExist) {
		return s, nil
	}
	if err == nil {
		err = yaml.Unmarshal(data, &s)
	}
	if err != nil {
		return defaults(), fmt.Errorf("settings in %s cannot be read, so those of the first start are used: %w", dir, err)
	}
	d := defaults()
	if s.Units != Inches {
		s.Units = Centimetres
	}
	if !(s.Scale >= 0.5 && s.Scale <= 4) {
		s.Scale = 0
	}
	if s.Wide < leastWide || s.Tall < leastTall {
		s.Wide, s.Tall = d.Wide, d.Tall
	}
	for _, side := range []*Side{&s.Sides.Left, &s.Sides.Right} {
		if !(side.Wide >= sideLeast && side.Wide <= sideMost) {
			side.Wide = 0
		}
	}
	s.Recent = s.Recent[:min(len(s.Recent), mostRecent)]
	if s.Folder == "" {
		s.Folder = d.Folder
	}
	return s, nil
}

// store writes a file into the config folder by way of a temporary one, so that
// a crash leaves the old or the new file, never half of one.
func store(dir, name string, data []byte) error {
	if err := os.MkdirAll(dir, 0o700); err != nil {
		return err
	}
	return outfile.Write(filepath.Join(dir, name), data)
}

// save writes the settings.
func (s Settings) save(dir string) error {
	data, err := yaml.Marshal(s)
	if err != nil {
		return err
	}
	return store(dir, settingsFile, data)
}

// The smallest window and how wide a panel can be drawn, units.
const (
	sideLeast = 220
	sideMost  = 560
	leastWide = 900
	leastTall = 600
)
