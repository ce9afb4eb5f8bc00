package web

import (
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"

	"suffice/examples"
)

func post(t testing.TB, s http.Handler, path string, form url.Values, headers ...string) *httptest.ResponseRecorder {
	t.Helper()
	r := httptest.NewRequest("POST", "http://localhost:8080"+path, strings.NewReader(form.Encode()))
	r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	for i := 0; i+1 < len(headers); i += 2 {
		r.Header.Set(headers[i], headers[i+1])
	}
	w := httptest.NewRecorder()
	s.ServeHTTP(w, r)
	return w
}

// A name that a name server gave away for this machine's address is refused: a page elsewhere could
// otherwise read the house.
func TestOnlyThisMachinesNamesAreAnswered(t *testing.T) {
	s := reading(t)
	for host, want := range map[string]int{
		"localhost": 200, "localhost:80": 200, "127.0.0.1:4000": 200, "[::1]:4000": 200, "[::1]": 200,
		"evil.example": 421, "evil.example:8080": 421, "localhost.evil.example": 421, "127.0.0.1.evil.example": 421, "192.168.1.4": 421, "0.0.0.0:8080": 421, "": 421,
	} {
		r := httptest.NewRequest("GET", "/sheets", nil)
		r.Host = host
		w := httptest.NewRecorder()
		s.ServeHTTP(w, r)
		if w.Code != want {
			t.Errorf("Host %q answers %d, want %d", host, w.Code, want)
		}
	}
}

func TestEveryAnswerCarriesThePolicy(t *testing.T) {
	s := reading(t)
	for _, path := range []string{"/", "/nowhere", "/year/days.json", s.assets.Look} {
		h := get(t, s, path).Header()
		if csp := h.Get("Content-Security-Policy"); !strings.Contains(csp, "script-src 'self';") || !strings.Contains(csp, "style-src 'self';") || strings.Contains(csp, "unsafe") {
			t.Errorf("%s has the policy %q", path, csp)
		}
		if h.Get("X-Content-Type-Options") != "nosniff" {
			t.Errorf("%s lets the browser guess its type", path)
		}
	}
}

// A form of another site cannot change the house, and no GET changes it.
func TestNothingElseChangesTheHouse(t *testing.T) {
	s := demo(t)
	form := url.Values{"hash": {s.house.Load().Hash.String()}, "part": {"water"}, "water.tanks[0].holds": {"31 kL"}}
	for _, headers := range [][]string{{"Sec-Fetch-Site", "cross-site"}, {"Origin", "http://evil.example"}, {"Origin", "null"}} {
		if w := post(t, s, "/change", form, headers...); w.Code != http.StatusForbidden {
			t.Errorf("with %v: %d, want 403", headers, w.Code)
		}
	}
	for _, path := range []string{"/change?" + form.Encode(), "/change/undo", "/change/reread"} {
		get(t, s, path)
	}
	if string(s.house.Load().Text) != string(examples.Demo) {
		t.Error("the house was changed")
	}
	if w := post(t, s, "/change", form, "Sec-Fetch-Site", "same-origin"); w.Code != http.StatusSeeOther {
		t.Errorf("its own form answers %d:\n%s", w.Code, w.Body)
	}
}

func TestALargeFormIsRefused(t *testing.T) {
	s := reading(t)
	if w := post(t, s, "/change", url.Values{"part": {strings.Repeat("x", mostBody+1)}}); w.Code != http.StatusBadRequest {
		t.Errorf("a form of %d bytes answers %d, want 400", mostBody+1, w.Code)
	}
}

// An asset's name changes with its bytes, so that it may be kept for ever.
func TestAssetsCarryTheirChecksum(t *testing.T) {
	a := assets{files: map[string][]byte{}}
	one, two := a.add("look.css", []byte("a")), a.add("look.css", []byte("b"))
	if one == two || !strings.HasPrefix(one, "/static/look-") || !strings.HasSuffix(one, ".css") {
		t.Errorf("two texts have the addresses %s and %s", one, two)
	}
	s := reading(t)
	if w := get(t, s, s.assets.Quick); w.Code != 200 || !strings.Contains(w.Header().Get("Content-Type"), "javascript") || !strings.Contains(w.Header().Get("Cache-Control"), "immutable") {
		t.Errorf("the script answers %d %v", w.Code, w.Header())
	}
	if w := get(t, s, "/static/look.css"); w.Code != http.StatusNotFound {
		t.Errorf("a style without its checksum answers %d, want 404", w.Code)
	}
}
