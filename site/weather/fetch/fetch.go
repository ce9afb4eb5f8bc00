package fetch

import (
	"context"
	"errors"
	"fmt"
	"net/http"
	"net/url"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"suffice/site/weather"
	"suffice/site/weather/files"
)

// A Fetcher asks one service.
type Fetcher struct {
	Base  string // the service's address; Base is the public one
	Cache string // the folder that keeps the years
	Tell  func(format string, args ...any)

	Client *http.Client                                     // nil for one of its own; redirections to other hosts are refused in any case
	Wait   func(ctx context.Context, d time.Duration) error // nil to wait by the clock
	Now    func() time.Time                                 // for dates in Retry-After; nil for the clock
}

// An Outcome says how the years came.
type Outcome struct {
	Kept    []int // were in the folder already
	Fetched []int // came from the service
}

// Fetch gives the record of a plan: each year from the folder, or else from the service. On a
// fault it gives the fault and what it has, which stays in the folder; the same call goes
// on from there.
func (f *Fetcher) Fetch(ctx context.Context, p Plan) (*weather.Record, Outcome, error) {
	var done Outcome
	if err := errors.Join(p.Faults(), f.baseFault()); err != nil {
		return nil, done, err
	}
	folder := p.folder(f.Cache, f.base())
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return nil, done, fmt.Errorf("%s: the folder for the years cannot be made: %w", folder, err)
	}
	var years []*weather.Record
	for year := p.From; year <= p.To; year++ {
		path := filepath.Join(folder, fmt.Sprintf("%04d.csv", year))
		r, err := p.open(path, year)
		if err == nil {
			years, done.Kept = append(years, r), append(done.Kept, year)
			continue
		}
		if !errors.Is(err, os.ErrNotExist) {
			f.tell("the kept year cannot be used and is fetched anew: %v", err)
		}
		if len(done.Fetched) > 0 {
			if err := f.wait(ctx, pause); err != nil {
				return nil, done, p.broken(done, year, err)
			}
		}
		if r, err = f.year(ctx, p, year, path); err != nil {
			return nil, done, p.broken(done, year, err)
		}
		years, done.Fetched = append(years, r), append(done.Fetched, year)
		f.tell("%d of %d years: %d has come", len(years), p.To-p.From+1, year)
	}
	r, err := files.Join(years)
	if err != nil {
		return nil, done, err
	}
	p.remark(r)
	return r, done, nil
}

// broken says that fetching ended, and that what came is kept.
func (p Plan) broken(done Outcome, year int, err error) error {
	return fmt.Errorf("fetching ended at %d: %w; %d of %d years are kept, the same command goes on from there",
		year, err, len(done.Kept)+len(done.Fetched), p.To-p.From+1)
}

// year asks for a year until it comes, and keeps it.
func (f *Fetcher) year(ctx context.Context, p Plan, year int, path string) (*weather.Record, error) {
	body, err := f.ask(ctx, f.base()+p.question(year))
	if err != nil {
		return nil, err
	}
	r, err := p.read(fmt.Sprintf("the answer for %d", year), strings.NewReader(string(body)), year)
	if err != nil {
		return nil, err
	}
	return r, keep(path, body)
}

// open reads a year that is kept.
func (p Plan) open(path string, year int) (*weather.Record, error) {
	file, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	r, err := p.read(filepath.Base(path), file, year)
	return r, errors.Join(err, file.Close())
}

// keep writes a year into the folder, whole or not at all.
func keep(path string, body []byte) error {
	file, err := os.CreateTemp(filepath.Dir(path), ".year-*")
	if err != nil {
		return fmt.Errorf("%s: cannot be written: %w", path, err)
	}
	_, err = file.Write(body)
	err = errors.Join(err, file.Sync(), file.Close())
	if err == nil {
		err = os.Rename(file.Name(), path)
	}
	if err != nil {
		return errors.Join(fmt.Errorf("%s: cannot be written: %w", path, err), os.Remove(file.Name()))
	}
	return nil
}

// remark adds what the service did not give to a record's warnings.
func (p Plan) remark(r *weather.Record) {
	var absent []string
	for _, name := range p.parameters() {
		has := slices.ContainsFunc(r.Series, func(s weather.Series) bool { return s.Source == name })
		if !has && !slices.Contains(r.Unread, name) {
			absent = append(absent, name)
		}
	}
	if len(absent) > 0 {
		r.Warnings = append(r.Warnings, "the service was asked for these and did not give them: "+strings.Join(absent, ", "))
	}
	if p.From < firstLight {
		r.Notes = append(r.Notes, fmt.Sprintf("the service has no light before %d", firstLight))
	}
	slices.SortFunc(r.Series, func(a, b weather.Series) int { return int(a.Column) - int(b.Column) })
}

func (f *Fetcher) base() string { return strings.TrimRight(f.Base, "/") }

func (f *Fetcher) baseFault() error {
	u, err := url.Parse(f.Base)
	if err != nil || u.Host == "" || u.Scheme != "https" && u.Scheme != "http" || u.RawQuery != "" {
		return fmt.Errorf("base address %q: write it as https://host", f.Base)
	}
	return nil
}

func (f *Fetcher) tell(format string, args ...any) {
	if f.Tell != nil {
		f.Tell(format, args...)
	}
}
