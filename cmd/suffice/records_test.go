package main

import (
	"bytes"
	"context"
	"flag"
	"fmt"
	"os"
	"strings"
	"testing"

	"suffice/cli"
)

var update = flag.Bool("update", false, "write the pages that show what the program prints")

// told is a real record, the command that takes it, and how much of its answer the page shows.
type told struct {
	title, about string
	args         []string
	lines        int
}

const records = "site/weather/files/testdata/"

var toldRecords = []told{
	{"Crete, daily, 37 years", "NASA POWER daily CSV, as served. The rain is reanalysis and no gauge.", []string{"prove", "examples/four/crete.yaml"}, 18},
	{"Angoche, daily, 25 years", "NASA POWER daily values without header; the house file says the units under weather.reading.", []string{"prove", "examples/four/angoche.yaml"}, 19},
	{"Bellevue, hourly, with its own rain", "NASA POWER hourly CSV in UTC, whose hourly rain is a rate in mm/day. One year only: the verdict says how little that proves.",
		[]string{"prove", "examples/roof-and-tank.yaml", "--weather", records + "power_hourly_seattle-bellevue_47.610N_122.202W_2025_UTC.csv.gz"}, 12},
	{"Denver, typical sky with the rain of a gauge", "TMY3 (its own rain is never read) and GHCN-Daily (values whose zero was only presumed are dropped).", []string{"prove", "examples/four/denver.yaml"}, 20},
	{"Sydney, rain and temperatures of a gauge, made sky", "GHCN-Daily; light is estimated from the day's range of temperature (FAO-56 eq. 50).",
		[]string{"prove", "examples/southern.yaml"}, 19},
	{"Melbourne, rain and temperatures of a gauge, made sky", "The same, for another place than the house file's.",
		[]string{"prove", "examples/southern.yaml", "--weather", records + "ASN00086071_melbourne-regional-office.dly.gz", "--given", "latitude=-37.808", "--given", "longitude=144.970", "--given", "altitude=31"}, 19},
	{"Looking at a record", "What a file truly holds, before anything is filled or made.",
		[]string{"weather", "look", records + "USC00042319_death-valley.dly.gz", "--given", "latitude=36.463", "--given", "longitude=-116.867"}, 58},
}

// TestRealRecords runs the commands of docs/real-records.md and holds the page to what they print.
func TestRealRecords(t *testing.T) {
	t.Chdir("../..")
	var page strings.Builder
	page.WriteString("# Real records\n\nWhat the program makes of real files of public agencies: the commands, run from the root of this\nrepository, and the first lines of what they print. Made by: go test ./cmd/suffice -run RealRecords -update\n")
	for _, r := range toldRecords {
		var out, errs bytes.Buffer
		status := cli.Run(context.Background(), r.args, cli.Streams{Out: &out, Err: &errs, Width: 80})
		if said := errs.String(); status > cli.FallsShort || said != "" && !strings.HasPrefix(said, "suffice: next: ") {
			t.Errorf("%s: exit status %d, %s", r.title, status, errs.String())
		}
		shown := strings.Split(out.String(), "\n")
		shown = shown[:min(r.lines, len(shown))]
		fmt.Fprintf(&page, "\n## %s\n\n%s\n\n    $ suffice %s\n", r.title, r.about, strings.Join(r.args, " "))
		for _, line := range shown {
			page.WriteString(strings.TrimRight("    "+line, " ") + "\n")
		}
		fmt.Fprintf(&page, "    (exit status %d)\n", status)
	}
	const path = "docs/real-records.md"
	if *update {
		if err := os.WriteFile(path, []byte(page.String()), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	if old, err := os.ReadFile(path); err != nil || string(old) != page.String() {
		t.Errorf("%s is stale: go test ./cmd/suffice -run RealRecords -update writes it anew (%v)", path, err)
	}
}
