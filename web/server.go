package web

import (
	"bytes"
	"net/http"
	"sync"
	"sync/atomic"

	"github.com/a-h/templ"

	"suffice/house"
	"suffice/report"
)

// Options say which house is served.
type Options struct {
	Path  string // of the house file, in which changes are written; "" keeps them in memory
	Name  string // what the file is called in faults
	Text  []byte // of the house file
	Prove func(*house.File) (*report.Proof, error)
}

// A Site is the pages of one house. It is an http.Handler and may be asked by many at once.
type Site struct {
	prove   func(*house.File) (*report.Proof, error)
	say     *catalogue
	assets  *assets
	handler http.Handler

	making sync.Mutex            // held while the house changes
	house  atomic.Pointer[lived] // as it is shown
}

// New reads the house, lives it once, and gives its pages.
func New(o Options) (*Site, error) {
	s := &Site{prove: o.Prove}
	var err error
	if s.say, err = english(); err != nil {
		return nil, err
	}
	if s.assets, err = newAssets(); err != nil {
		return nil, err
	}
	file, err := house.Read(o.Name, o.Text)
	if err != nil {
		return nil, err
	}
	first, err := s.live(&lived{Path: o.Path, Name: o.Name, Text: o.Text}, file)
	if err != nil {
		return nil, err
	}
	s.house.Store(first)
	s.handler = guard(s.routes())
	return s, nil
}

// ServeHTTP answers one request.
func (s *Site) ServeHTTP(w http.ResponseWriter, r *http.Request) { s.handler.ServeHTTP(w, r) }

// routes lists every address there is.
func (s *Site) routes() http.Handler {
	m := http.NewServeMux()
	m.HandleFunc("GET /{$}", s.page(todayPage))
	m.HandleFunc("GET /year", s.page(yearPage))
	m.HandleFunc("GET /year/days.json", s.days)
	m.HandleFunc("GET /water", s.page(waterPage))
	m.HandleFunc("GET /power", s.page(powerPage))
	m.HandleFunc("GET /warmth", s.page(warmthPage))
	m.HandleFunc("GET /garden", s.page(gardenPage))
	m.HandleFunc("GET /waste", s.page(wastePage))
	m.HandleFunc("GET /hour", s.page(hourPage))
	m.HandleFunc("GET /sheets", s.page(sheetsPage))
	m.HandleFunc("GET /sheets/{name}", s.page(sheetPage))
	m.HandleFunc("GET /change", s.page(changePage))
	m.HandleFunc("POST /change", s.change)
	m.HandleFunc("POST /change/undo", s.undo)
	m.HandleFunc("POST /change/reread", s.reread)
	m.HandleFunc("GET /static/{name}", s.assets.serve)
	m.HandleFunc("/", s.page(missingPage))
	return m
}

// A view is what every page knows.
type view struct {
	*catalogue
	*lived
	Assets *assets
	Here   string // path of the page's place in the list of pages
	Title  string
}

// A shown is a page to be sent.
type shown struct {
	Status int // 0 means http.StatusOK
	Here   string
	Title  string
	Body   templ.Component

	Refresh string // header of that name, for a page that shows work on its way; "" for none
}

// page makes a handler from what builds a page. The whole page is made before its first byte
// is sent, so that a fault never leaves half of one.
func (s *Site) page(build func(*view, *http.Request) shown) http.HandlerFunc {
	return func(w http.ResponseWriter, r *http.Request) { s.send(w, r, build) }
}

// asking is the header by which quick.js asks while somebody is still writing: half a value is then
// told as a fault in the page, and is no fault of the request.
const asking = "X-Suffice-Part"

func (s *Site) send(w http.ResponseWriter, r *http.Request, build func(*view, *http.Request) shown) {
	v := &view{catalogue: s.say, lived: s.house.Load(), Assets: s.assets}
	p := build(v, r)
	v.Here, v.Title = p.Here, p.Title
	var whole bytes.Buffer
	if err := layout(v, p.Body).Render(r.Context(), &whole); err != nil {
		http.Error(w, s.say.Say("fault.own", "fault", err), http.StatusInternalServerError)
		return
	}
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.Header().Set("Cache-Control", "no-store")
	if p.Refresh != "" {
		w.Header().Set("Refresh", p.Refresh)
	}
	if p.Status != 0 && r.Header.Get(asking) == "" {
		w.WriteHeader(p.Status)
	}
	_, _ = whole.WriteTo(w) // a reader that has gone is no fault
}

func missingPage(v *view, _ *http.Request) shown {
	return shown{Status: http.StatusNotFound, Title: v.Say("missing.title"), Body: missing(v)}
}
