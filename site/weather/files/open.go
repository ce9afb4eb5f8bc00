// Package files reads weather records: one file of this folder for each format.
package files

import (
	"errors"

	"suffice/site"
	"suffice/site/weather"
)

// Options gives what a file does not say itself. Set fills them from text.
type Options struct {
	Place   *site.Place               // latitude, longitude, altitude, and a name
	Time    *weather.Timekeeping      // what the file's days and hours follow
	Clock   *float64                  // hours of the file's time ahead of UTC
	Units   map[string]string         // unit of a column, by the file's own name for it
	Columns map[string]weather.Column // what a column is, by the file's own name for it
}

// Set takes one option as text: latitude, longitude, altitude, name, time, clock,
// unit.NAME or column.NAME, where NAME is the file's own name of a column.
func (o *Options) Set(key, value string) error { return errors.New("files: not yet written") }

// Open reads a weather file of any known format, gzip-compressed or not.
func Open(path string, o Options) (*weather.Record, error) {
	return nil, errors.New("files: not yet written")
}

// Demo gives the record that comes with the program: Crete, daily, 1984 to 2020.
func Demo() (*weather.Record, error) { return nil, errors.New("files: not yet written") }
