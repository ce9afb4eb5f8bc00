// Package report tells what was computed: tables and small charts for people, JSON
// and rows for programs. It computes nothing but shares, means and quantiles of what
// the years did.
package report
