package cli

import (
	"errors"
	"fmt"
	"io/fs"
	"os"

	"suffice/examples"
	"suffice/hourly"
	"suffice/house"
	"suffice/report"
	"suffice/site"
	"suffice/site/weather/files"
)

// ownHouse is the file that a verb takes when none is named.
const ownHouse = "house.yaml"

// openHouse reads the file named, else house.yaml here, else the built-in demo, and says so
// first where the choice was not the user's.
func openHouse(path string, s Streams) (*house.File, error) {
	if path != "" {
		return house.Open(path)
	}
	if _, err := os.Stat(ownHouse); !errors.Is(err, fs.ErrNotExist) {
		fmt.Fprintf(s.Err, "suffice: taking %s of this folder\n", ownHouse)
		return house.Open(ownHouse)
	}
	fmt.Fprintf(s.Err, "suffice: no file is named and there is no %s here: taking the built-in demo house\n", ownHouse)
	return openDemo()
}

func openDemo() (*house.File, error) { return house.Read("demo.yaml", examples.Demo) }

// weatherFlags let a person try a house in other weather than its file names.
type weatherFlags struct {
	Weather string `name:"weather" placeholder:"FILE" help:"A weather record in the place of the house file's."`
	Rain    string `name:"rain" placeholder:"FILE" help:"A rain gauge (GHCN-Daily) in the place of the record's rain."`
	Drawn   bool   `name:"drawn" help:"With a gauge: draw a sky for gauge years that the record does not have."`
	saidFlags
}

// prepare composes the house and its weather into a run.
func (f *weatherFlags) prepare(file *house.File) (*hourly.Run, report.Sky, error) {
	h, err := house.Compose(file)
	if err != nil {
		return nil, report.Sky{}, err
	}
	if err := f.replace(&h.Weather, h.Place); err != nil {
		return nil, report.Sky{}, err
	}
	hours, done, source, err := h.Weather.Hours(h.Place)
	if err != nil {
		return nil, report.Sky{}, err
	}
	run, err := hourly.Prepare(h, hours)
	return run, report.Sky{Source: source, Report: done}, err
}

// replace puts what was typed in the place of what the house file says. A record that
// does not say where it is from is taken to be of the house's place.
func (f *weatherFlags) replace(r *house.Record, at site.Place) error {
	here := files.Options{Latitude: &at.Latitude, Longitude: &at.Longitude, Altitude: &at.Altitude}
	if f.Weather != "" {
		r.Path, r.BuiltIn, r.Rain, r.Reading = f.Weather, "", "", here
	}
	if f.Rain != "" {
		r.Rain, r.Matched, r.RainReading = f.Rain, !f.Drawn, here
	}
	for _, word := range f.Given {
		if err := setOption(&r.Reading, word); err != nil {
			return err
		}
	}
	return nil
}
