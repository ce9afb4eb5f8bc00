// Package fetch asks the public service of NASA POWER for the weather of a point, a year at
// a time, and keeps each year in a folder, so that a broken night of fetching is taken up
// where it ended.
//
// Checked against: a server on this machine that replays recorded files of the service, year
// by year, with its refusals, broken answers and delays (fetch_test.go).
//
// Left out: it has not been tried on the live network. The address, the names of the query
// and the first years of the service are from memory; when they have changed the service's
// refusal is shown as it is, and the base address can be given. Other services; the
// running year, which the service still changes.
package fetch
