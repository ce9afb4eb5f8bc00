package fetch

import (
	"compress/gzip"
	"context"
	"errors"
	"fmt"
	"io"
	"math"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"suffice/site/weather"
	"suffice/site/weather/files"
)

const records = "../files/testdata/"

// A replay is the service as a file of it would have been given: year by year.
type replay struct {
	*httptest.Server
	head  []string         // the header's lines, the dates in the third, and the names of the columns
	years map[int][]string // the rows
	step  string

	mu     sync.Mutex
	asked  []url.Values
	answer func(w http.ResponseWriter, r *http.Request, n int) bool // n from 1; true if it has answered
}

func unpack(t *testing.T, name string) string {
	t.Helper()
	file, err := os.Open(records + name)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	z, err := gzip.NewReader(file)
	if err != nil {
		t.Fatal(err)
	}
	text, err := io.ReadAll(z)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

var promised = regexp.MustCompile(`\d\d/\d\d/\d{4} through \d\d/\d\d/\d{4}`)

// newReplay serves a recorded file of the service on this machine.
func newReplay(t *testing.T, name, step string) *replay {
	t.Helper()
	s := &replay{years: make(map[int][]string), step: step}
	inTable := false
	for line := range strings.Lines(unpack(t, name)) {
		switch year, _, _ := strings.Cut(line, ","); {
		case !inTable || strings.HasPrefix(line, "YEAR"):
			s.head = append(s.head, line)
		default:
			y, err := strconv.Atoi(year)
			if err != nil {
				t.Fatal(err)
			}
			s.years[y] = append(s.years[y], line)
		}
		inTable = inTable || strings.HasPrefix(line, "-END HEADER-")
	}
	s.Server = httptest.NewServer(s)
	t.Cleanup(s.Close)
	return s
}

func (s *replay) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.asked = append(s.asked, r.URL.Query())
	if s.answer != nil && s.answer(w, r, len(s.asked)) {
		return
	}
	if r.URL.Path != "/api/temporal/"+s.step+"/point" {
		http.NotFound(w, r)
		return
	}
	year, _ := strconv.Atoi(r.URL.Query().Get("start")[:4])
	fmt.Fprint(w, s.text(year))
}

// text gives a year as the service would.
func (s *replay) text(year int) string {
	var b strings.Builder
	for _, line := range s.head {
		if strings.HasPrefix(strings.ToLower(line), "dates ") {
			line = promised.ReplaceAllString(line, fmt.Sprintf("01/01/%04d through 12/31/%04d", year, year))
		}
		b.WriteString(line)
	}
	for _, row := range s.years[year] {
		b.WriteString(row)
	}
	return b.String()
}

// waits notes how long was waited, and does not wait.
type waits struct{ all []time.Duration }

func (w *waits) wait(ctx context.Context, d time.Duration) error {
	w.all = append(w.all, d)
	return context.Cause(ctx)
}

func fetcher(t *testing.T, s *replay) (*Fetcher, *waits) {
	w := new(waits)
	return &Fetcher{Base: s.URL, Cache: t.TempDir(), Client: s.Client(), Wait: w.wait,
		Now: func() time.Time { return time.Date(2026, 3, 1, 12, 0, 0, 0, time.UTC) }}, w
}

const crete = "power_daily_crete_35.031N_24.834E_1984-2020_LST.csv.gz"

func cretePlan(from, to int) Plan {
	return Plan{Latitude: 35.0309, Longitude: 24.8335, From: from, To: to, Step: weather.Daily, ThisYear: 2026}
}

// same holds a record's values to those of the rows between two steps of another.
func same(t *testing.T, got, whole *weather.Record) {
	t.Helper()
	per := 1
	if got.Step == weather.Hourly {
		per = 24
	}
	at := (got.Start - whole.Start) * per
	for _, s := range whole.Series {
		mine := got.Of(s.Column)
		if mine == nil {
			t.Fatalf("%s is gone", s.Column)
		}
		for i, v := range mine.Values {
			if want := s.Values[at+i]; v != want && !(math.IsNaN(v) && math.IsNaN(want)) || mine.MarkAt(i) != s.MarkAt(at+i) {
				t.Fatalf("%s, row %d: %g, recorded %g", s.Column, i, v, want)
			}
		}
	}
}

// The years that come one by one are the file that came at once, in days and in hours.
func TestYearsJoinToTheFile(t *testing.T) {
	for _, c := range []struct {
		file, step string
		plan       Plan
	}{
		{crete, "daily", cretePlan(1984, 2020)},
		{"power_hourly_delhi_28.627N_77.172E_2015-2020_UTC.csv.gz", "hourly", Plan{Latitude: 28.627, Longitude: 77.172, From: 2015, To: 2020, Step: weather.Hourly, ThisYear: 2026}},
	} {
		s := newReplay(t, c.file, c.step)
		f, w := fetcher(t, s)
		r, done, err := f.Fetch(t.Context(), c.plan)
		if err != nil {
			t.Fatal(err)
		}
		whole, err := files.Open(records+c.file, files.Options{})
		if err != nil {
			t.Fatal(err)
		}
		if r.Start != whole.Start || r.Steps != whole.Steps || len(done.Fetched) != c.plan.To-c.plan.From+1 {
			t.Errorf("%s: %d rows from day %d, %d years; the file has %d from %d", c.file, r.Steps, r.Start, len(done.Fetched), whole.Steps, whole.Start)
		}
		same(t, r, whole)
		for i, q := range s.asked {
			year := c.plan.From + i
			if q.Get("start") != fmt.Sprintf("%d0101", year) || q.Get("end") != fmt.Sprintf("%d1231", year) || q.Get("time-standard") != c.plan.standard() || q.Get("format") != "CSV" {
				t.Errorf("question %d is %v", i, q)
			}
		}
		if len(w.all) != len(done.Fetched)-1 || slices.Max(w.all) != pause {
			t.Errorf("waits between years: %v", w.all)
		}
	}
}

// What the recorded files do not have although it is asked for is warned of.
func TestWhatWasNotGivenIsSaid(t *testing.T) {
	f, _ := fetcher(t, newReplay(t, crete, "daily"))
	r, _, err := f.Fetch(t.Context(), cretePlan(1984, 1984))
	if err != nil || !slices.ContainsFunc(r.Warnings, func(w string) bool {
		return strings.Contains(w, "did not give them") && strings.Contains(w, "RH2M") && !strings.Contains(w, "T2M_MIN")
	}) {
		t.Errorf("%v, %+v", err, r)
	}
}

// A service that falls silent leaves the years that came; the next call asks only for the rest.
func TestGoesOnWhereItEnded(t *testing.T) {
	s := newReplay(t, crete, "daily")
	s.answer = func(w http.ResponseWriter, _ *http.Request, n int) bool {
		if n > 3 {
			http.Error(w, "busy", http.StatusInternalServerError)
		}
		return n > 3
	}
	f, w := fetcher(t, s)
	_, done, err := f.Fetch(t.Context(), cretePlan(1990, 1995))
	if err == nil || !strings.Contains(err.Error(), "ended at 1993") || !strings.Contains(err.Error(), "500") || !strings.Contains(err.Error(), "3 of 6 years are kept") {
		t.Fatalf("%v", err)
	}
	if !slices.Equal(done.Fetched, []int{1990, 1991, 1992}) || len(s.asked) != 3+tries {
		t.Errorf("fetched %v with %d questions", done.Fetched, len(s.asked))
	}
	if want := []time.Duration{pause, pause, pause, 2 * time.Second, 4 * time.Second, 8 * time.Second, 16 * time.Second}; !slices.Equal(w.all, want) {
		t.Errorf("waits %v, want %v", w.all, want)
	}
	s.answer, s.asked = nil, nil
	r, done, err := f.Fetch(t.Context(), cretePlan(1990, 1995))
	if err != nil || !slices.Equal(done.Kept, []int{1990, 1991, 1992}) || !slices.Equal(done.Fetched, []int{1993, 1994, 1995}) || len(s.asked) != 3 {
		t.Fatalf("%v: %+v, %d questions", err, done, len(s.asked))
	}
	s.asked = nil
	again, done, err := f.Fetch(t.Context(), cretePlan(1990, 1995))
	if err != nil || len(s.asked) != 0 || len(done.Kept) != 6 {
		t.Fatalf("%v: %+v, %d questions for kept years", err, done, len(s.asked))
	}
	same(t, again, r)
	left, err := filepath.Glob(filepath.Join(f.Cache, "*", ".*"))
	if err != nil || len(left) != 0 {
		t.Errorf("left behind: %v %v", left, err)
	}
}

// Retry-After is honoured in seconds and as a date; a wait beyond patience ends it, kindly.
func TestRetryAfter(t *testing.T) {
	for header, want := range map[string]time.Duration{
		"37": 37 * time.Second, "1": first, "": first, "soon": first, "-5": first,
		"Sun, 01 Mar 2026 12:01:30 GMT": 90 * time.Second, "Sun, 01 Mar 2026 11:00:00 GMT": first,
	} {
		s := newReplay(t, crete, "daily")
		s.answer = func(w http.ResponseWriter, _ *http.Request, n int) bool {
			if n == 1 {
				w.Header().Set("Retry-After", header)
				http.Error(w, "slow down", http.StatusTooManyRequests)
			}
			return n == 1
		}
		f, w := fetcher(t, s)
		if _, _, err := f.Fetch(t.Context(), cretePlan(1984, 1984)); err != nil || !slices.Equal(w.all, []time.Duration{want}) {
			t.Errorf("Retry-After %q: waited %v, want %v (%v)", header, w.all, want, err)
		}
	}
	s := newReplay(t, crete, "daily")
	s.answer = func(w http.ResponseWriter, _ *http.Request, _ int) bool {
		w.Header().Set("Retry-After", "86400")
		http.Error(w, "", http.StatusTooManyRequests)
		return true
	}
	f, w := fetcher(t, s)
	_, _, err := f.Fetch(t.Context(), cretePlan(1984, 1984))
	if err == nil || !strings.Contains(err.Error(), "asks to wait 24h0m0s") || len(w.all) != 0 || len(s.asked) != 1 {
		t.Errorf("a day's wait: %v, waited %v, %d questions", err, w.all, len(s.asked))
	}
}

// Cancelling ends a wait and an answer under way.
func TestCancel(t *testing.T) {
	stop := errors.New("enough")
	s := newReplay(t, crete, "daily")
	ctx, cancel := context.WithCancelCause(t.Context())
	s.answer = func(w http.ResponseWriter, r *http.Request, n int) bool {
		if n < 3 {
			return false
		}
		cancel(stop)
		<-r.Context().Done()
		return true
	}
	f, _ := fetcher(t, s)
	_, done, err := f.Fetch(ctx, cretePlan(1984, 1999))
	if !errors.Is(err, stop) || len(done.Fetched) != 2 || len(s.asked) != 3 {
		t.Errorf("%v: %+v, %d questions", err, done, len(s.asked))
	}
	f.Wait = nil
	ctx, cancel = context.WithCancelCause(t.Context())
	cancel(stop)
	if err := f.wait(ctx, time.Hour); !errors.Is(err, stop) {
		t.Errorf("an hour's wait ended with %v", err)
	}
}

// Answers that are not what was asked for are refused and not kept.
func TestWrongAnswersAreNotKept(t *testing.T) {
	elsewhere := httptest.NewServer(http.HandlerFunc(func(http.ResponseWriter, *http.Request) {
		t.Error("another host was asked")
	}))
	defer elsewhere.Close()
	whole := newReplay(t, crete, "daily").text(1984)
	for name, c := range map[string]struct {
		status     int
		body, says string
		questions  int
	}{
		"unprocessable": {422, "{\"messages\":[\"latitude\\u001b is odd\x1b[31m\"]}", "422 Unprocessable Entity: {\"messages\"", 1},
		"not found":     {404, "gone", "404 Not Found: gone", 1},
		"a page":        {200, "<html>down for repair</html>", "the format is not known", 1},
		"cut":           {200, whole[:len(whole)/2], "cut short", 1},
		"another place": {200, strings.Replace(whole, "Latitude  35.0309", "Latitude  36.0309", 1), "asked for were 35.0309", 1},
		"another year":  {200, newReplay(t, crete, "daily").text(1985), "begins on 1985-01-01", 1},
		"another time":  {200, strings.Replace(whole, "12/31/1984 ", "12/31/1984 in UTC", 1), "follows UTC", 1},
		"endless":       {200, strings.Repeat("x", largest+1), "more than 16 MB", 1},
		"elsewhere":     {302, elsewhere.URL, "another host", 1},
		"empty":         {503, "", "503 Service Unavailable, after 5 tries", tries},
	} {
		s := newReplay(t, crete, "daily")
		s.answer = func(w http.ResponseWriter, _ *http.Request, _ int) bool {
			if c.status == 302 {
				w.Header().Set("Location", c.body)
			}
			w.WriteHeader(c.status)
			fmt.Fprint(w, c.body)
			return true
		}
		f, _ := fetcher(t, s)
		_, _, err := f.Fetch(t.Context(), cretePlan(1984, 1984))
		if err == nil || !strings.Contains(err.Error(), c.says) || strings.ContainsRune(err.Error(), '\x1b') || len(s.asked) != c.questions {
			t.Errorf("%s: %v, %d questions; want %q", name, err, len(s.asked), c.says)
		}
		if kept, _ := filepath.Glob(filepath.Join(f.Cache, "*", "*")); len(kept) != 0 {
			t.Errorf("%s: kept %v", name, kept)
		}
	}
}

// A kept year that was damaged is fetched anew, and that is said.
func TestDamagedYearsAreFetchedAnew(t *testing.T) {
	s := newReplay(t, crete, "daily")
	f, _ := fetcher(t, s)
	if _, _, err := f.Fetch(t.Context(), cretePlan(1984, 1986)); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(cretePlan(1984, 1986).folder(f.Cache, f.base()), "1985.csv")
	if err := os.Truncate(path, 3000); err != nil {
		t.Fatal(err)
	}
	var told []string
	f.Tell = func(format string, args ...any) { told = append(told, fmt.Sprintf(format, args...)) }
	_, done, err := f.Fetch(t.Context(), cretePlan(1984, 1986))
	if err != nil || !slices.Equal(done.Fetched, []int{1985}) || len(told) == 0 || !strings.Contains(told[0], "fetched anew: 1985.csv") {
		t.Errorf("%v: %+v, told %q", err, done, told)
	}
}

// Years of different places, steps or services never share a folder.
func TestFoldersAreApart(t *testing.T) {
	hourly := cretePlan(2001, 2002)
	hourly.Step = weather.Hourly
	west := cretePlan(2001, 2002)
	west.Longitude = -24.8335
	p := cretePlan(2001, 2002)
	names := []string{p.folder("c", "http://a"), p.folder("c", "http://b"), hourly.folder("c", "http://a"), west.folder("c", "http://a")}
	slices.Sort(names)
	if len(slices.Compact(names)) != 4 || cretePlan(1984, 1990).folder("c", "http://a") != p.folder("c", "http://a") {
		t.Errorf("folders: %q", names)
	}
}

// Plans that cannot be are refused before anyone is asked.
func TestPlansAreChecked(t *testing.T) {
	s := newReplay(t, crete, "daily")
	f, _ := fetcher(t, s)
	for says, change := range map[string]func(*Plan){
		"latitude 91":            func(p *Plan) { p.Latitude = 91 },
		"longitude -181":         func(p *Plan) { p.Longitude = -181 },
		"run backwards":          func(p *Plan) { p.From, p.To = 1999, 1990 },
		"values begin in 1981":   func(p *Plan) { p.From = 1980 },
		"values begin in 2001":   func(p *Plan) { p.Step = weather.Hourly },
		"the last is 2025":       func(p *Plan) { p.To = 2026 },
		"latitude NaN":           func(p *Plan) { p.Latitude = 0; p.Latitude /= p.Latitude },
		"base address \"ftp://a": func(*Plan) { f.Base = "ftp://a" },
	} {
		p := cretePlan(1984, 1990)
		change(&p)
		if _, _, err := f.Fetch(t.Context(), p); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%v, want %q", err, says)
		}
		f.Base = s.URL
	}
	if len(s.asked) != 0 {
		t.Errorf("%d questions", len(s.asked))
	}
}
