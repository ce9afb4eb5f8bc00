package files

import (
	"bufio"
	"compress/gzip"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"suffice/quantity"
	"suffice/site/weather"
)

// Write writes a record in our own form, docs/records.md. Read gives it back the same,
// but for the line numbers.
func Write(to io.Writer, r *weather.Record) error {
	w := bufio.NewWriter(to)
	line := func(key, value string) { fmt.Fprintf(w, "# %s: %s\n", key, oneLine(value)) }
	fmt.Fprintln(w, ownFirst)
	line("format", r.Format)
	if r.Place.Name != "" {
		line("name", r.Place.Name)
	}
	if r.Placed {
		line("latitude", quantity.Text(float64(r.Place.Latitude), "deg"))
		line("longitude", quantity.Text(float64(r.Place.Longitude), "deg"))
		line("altitude", quantity.Text(float64(r.Place.Altitude), "m"))
	}
	line("clock", quantity.Text(r.Place.Clock, "h"))
	line("time", r.Time.String())
	line("step", r.Step.String())
	if r.Typical {
		line("typical", strings.Trim(fmt.Sprint(r.MonthFrom), "[]"))
	}
	for _, s := range r.Series {
		line("column", fmt.Sprintf("%s = %s | %s", s.Column, s.Source, s.Unit))
	}
	if len(r.Unread) > 0 {
		line("unread", strings.Join(r.Unread, ", "))
	}
	for _, n := range r.Notes {
		line("note", n)
	}
	for _, n := range r.Warnings {
		line("warning", n)
	}
	w.WriteString(ownStamp(r.Step))
	for _, s := range r.Series {
		fmt.Fprintf(w, ",%s [%s]", s.Column, s.Column.Unit(r.Step))
	}
	w.WriteByte('\n')
	for i := range r.Steps {
		w.WriteString(ownTimeText(r, i))
		for k := range r.Series {
			s := &r.Series[k]
			w.WriteByte(',')
			w.WriteString(ownText(s.Values[i], s.MarkAt(i)))
		}
		w.WriteByte('\n')
	}
	return w.Flush()
}

// Save writes a record in our own form to a file, gzip-compressed where the name ends in
// .gz. The file is there whole or not at all: it is written beside its place and renamed.
func Save(path string, r *weather.Record) error {
	file, err := os.CreateTemp(filepath.Dir(path), ".record-*")
	if err != nil {
		return fmt.Errorf("%s: cannot be written: %w", path, err)
	}
	err = saveTo(file, strings.HasSuffix(path, ".gz"), r)
	if err = errors.Join(err, file.Sync(), file.Close()); err == nil {
		if err = os.Chmod(file.Name(), 0o644); err == nil {
			err = os.Rename(file.Name(), path)
		}
	}
	if err != nil {
		return errors.Join(fmt.Errorf("%s: cannot be written: %w", path, err), os.Remove(file.Name()))
	}
	return nil
}

func saveTo(file io.Writer, packed bool, r *weather.Record) error {
	if !packed {
		return Write(file, r)
	}
	z := gzip.NewWriter(file)
	return errors.Join(Write(z, r), z.Close())
}

// ownTimeText writes the time at which row i begins.
func ownTimeText(r *weather.Record, i int) string {
	if r.Step == weather.Daily {
		return dateText(r.Start + i)
	}
	hour := r.StartHour + i
	return fmt.Sprintf("%sT%02d", dateText(r.Start+hour/24), hour%24)
}

// oneLine keeps a text on its line of the header.
func oneLine(text string) string {
	return strings.Join(strings.Fields(text), " ")
}
