package cli

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"time"

	"suffice/quantity"
	"suffice/site/weather"
	"suffice/site/weather/fetch"
	"suffice/site/weather/files"
)

type fetchVerb struct {
	Latitude  float64 `name:"latitude" required:"" help:"Degrees, north positive."`
	Longitude float64 `name:"longitude" required:"" help:"Degrees, east positive."`
	From      int     `name:"from" required:"" help:"The first year."`
	To        int     `name:"to" required:"" help:"The last year; it must be over."`
	Hourly    bool    `name:"hourly" help:"Hours (since 2001) instead of days."`
	Out       string  `short:"o" name:"out" required:"" placeholder:"FILE" help:"The plain CSV to write; compressed where its name ends in .gz."`
	Base      string  `name:"base" env:"SUFFICE_POWER_BASE" default:"https://power.larc.nasa.gov" help:"The service's address."`
	Cache     string  `name:"cache" env:"SUFFICE_CACHE" placeholder:"FOLDER" help:"Where the years are kept; else suffice/power in the system's folder for such."`
}

func (v *fetchVerb) Help() string {
	return `Asks NASA POWER, a public service, for the weather of a point: light from satellites,
weather and rain from a reanalysis. Its rain is no gauge: it may drift and jump.
Each year is kept as it comes; after a break the same command goes on from there.

This has not been tried on the live network: it was tried against recorded answers.
If the service has changed, its refusal is shown; --base names another address.

  suffice weather fetch --latitude=-33.87 --longitude=151.21 --from 1984 --to 2020 -o sydney.csv.gz`
}

func (v *fetchVerb) Run(ctx context.Context, s Streams) error {
	if v.Cache == "" {
		folder, err := os.UserCacheDir()
		if err != nil {
			return fmt.Errorf("there is no folder to keep the years in: give --cache FOLDER (%w)", err)
		}
		v.Cache = filepath.Join(folder, "suffice", "power")
	}
	p := fetch.Plan{Latitude: quantity.Degrees(v.Latitude), Longitude: quantity.Degrees(v.Longitude),
		From: v.From, To: v.To, Step: weather.Daily, ThisYear: time.Now().UTC().Year()}
	if v.Hourly {
		p.Step = weather.Hourly
	}
	f := fetch.Fetcher{Base: v.Base, Cache: v.Cache, Tell: func(format string, args ...any) {
		fmt.Fprintf(s.Err, "suffice: "+format+"\n", args...)
	}}
	r, done, err := f.Fetch(ctx, p)
	if err != nil {
		return err
	}
	if err := files.Save(v.Out, r); err != nil {
		return err
	}
	_, err = fmt.Fprintf(s.Err, "wrote %s: %d %s rows, %d years fetched, %d kept from before\n", v.Out, r.Steps, r.Step, len(done.Fetched), len(done.Kept))
	return err
}
