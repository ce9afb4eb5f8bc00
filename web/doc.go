// Package web serves the house as pages on the machine it runs on: Today, Year, Water,
// Power, Warmth, Garden, Waste, Sheets and Change, one file per page. Every page is made whole by the server and
// works without script; quick.js only saves the reader a button.
//
// Checked against: an HTML reader (pages_test.go: every page closes what it opens, no id stands
// twice, nothing is fetched from elsewhere), the published formula of contrast (look_test.go),
// and the proof itself (the figures of a page are the report's).
//
// The proof is computed once at the start and again after a change; pages only show it.
//
// Left out: any address but this machine's (it needs a password, which there is none of
// yet), readings of meters.
package web

// The pages are written in templ; their Go is made by a program whose version stands in
// go.mod, so that maker and made fit together.
//go:generate go run github.com/a-h/templ/cmd/templ@v0.3.1100 generate
