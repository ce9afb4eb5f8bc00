// Package files reads weather records: one file of this folder for each format.
//
// Checked against: yearly totals, ranges and gaps of real files of NASA POWER, GHCN-Daily,
// TMY3, SURFRAD, USCRN and MET Norway, counted by other means (testdata/README.md), and the
// agencies' own descriptions of their formats.
//
// Left out: formats of one program only; light in forecasts, which has to be made from
// their cloud.
package files

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"suffice/site/weather"
)

// A format is one kind of file.
type format struct {
	name  string
	looks func(lines []string) bool // whether a file that begins so is of this kind
	read  func(*source, Options) (*weather.Record, error)
}

// formats lists them in the order in which they are tried.
var formats = []format{
	{"NASA POWER CSV", looksPower, readPower},
	{"JSON of NASA POWER or MET Norway", looksJSON, readJSON},
	{"TMY3 CSV", looksTMY3, readTMY3},
	{"GHCN-Daily", looksDaily, readDaily},
	{"SURFRAD", looksSurfrad, readSurfrad},
	{"USCRN daily", looksUSCRN, readUSCRN},
	{"weather record CSV", looksOwn, readOwn},
	{"CSV without header", looksBare, readBare},
}

// Open reads a weather file of any known format, gzip-compressed or not, and looks its
// values over: what cannot be true is a fault of the file, with its line, or is counted
// as missing and warned of.
func Open(path string, o Options) (*weather.Record, error) {
	s, file, err := openSource(path)
	if err != nil {
		return nil, err
	}
	r, err := read(s, o)
	return r, errors.Join(err, file.Close())
}

// Read reads a weather file from memory or a stream; name is for messages.
func Read(name string, from io.Reader, o Options) (*weather.Record, error) {
	s, err := newSource(name, from)
	if err != nil {
		return nil, err
	}
	return read(s, o)
}

func read(s *source, o Options) (*weather.Record, error) {
	lines := s.firstLines(2)
	for _, f := range formats {
		if !f.looks(lines) {
			continue
		}
		r, err := f.read(s, o)
		if err != nil {
			return nil, err
		}
		if err := weather.Check(r); err != nil {
			return nil, err
		}
		return r, nil
	}
	return nil, fmt.Errorf("%s: the format is not known: its first line is %q; read are %s", s.name, clip(lines[0]), known())
}

func known() string {
	var names []string
	for _, f := range formats[:len(formats)-1] {
		names = append(names, f.name)
	}
	return strings.Join(names, ", ")
}
