package web

import (
	"net"
	"net/http"
)

// policy lets a page use what this program serves and nothing else: no script or style written
// into it, nothing from elsewhere, no frame around it.
const policy = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self'; " +
	"form-action 'self'; base-uri 'none'; frame-ancestors 'none'"

// mostBody is the most bytes a form may send: a house file's values are a few kilobytes.
const mostBody = 256 << 10

// guard holds every request to the rules of a program that only its own machine may use.
func guard(next http.Handler) http.Handler {
	sameOrigin := http.NewCrossOriginProtection().Handler(next)
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		h := w.Header()
		h.Set("Content-Security-Policy", policy)
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("Referrer-Policy", "no-referrer")
		h.Set("Cross-Origin-Resource-Policy", "same-origin")
		h.Set("Cross-Origin-Opener-Policy", "same-origin")
		if !ownHost(r.Host) {
			http.Error(w, "this program answers only under localhost, 127.0.0.1 or [::1]: write one of these into the address", http.StatusMisdirectedRequest)
			return
		}
		r.Body = http.MaxBytesReader(w, r.Body, mostBody)
		sameOrigin.ServeHTTP(w, r)
	})
}

// ownHost reports whether a Host header names this machine by a name that no name server can
// give away: a page elsewhere whose name is made to lead here still sends its own name.
func ownHost(host string) bool {
	name, _, err := net.SplitHostPort(host)
	if err != nil {
		name = host
	}
	switch name {
	case "localhost", "127.0.0.1", "::1", "[::1]":
		return true
	}
	return false
}
