package fetch

import (
	"crypto/sha256"
	"errors"
	"fmt"
	"math"
	"net/url"
	"path/filepath"
	"strings"

	"suffice/quantity"
	"suffice/site/weather"
)

// Base is the address of the public service (from memory).
const Base = "https://power.larc.nasa.gov"

// A Plan says what is wanted.
type Plan struct {
	Latitude, Longitude quantity.Degrees
	From, To            int          // years, both included
	Step                weather.Step // Daily in local solar days, or Hourly in UTC
	ThisYear            int          // the running year, which is not fetched
}

// firstYears are the first whole years of the service (from memory): weather from 1981, light
// from 1984; hours from 2001.
const (
	firstDaily, firstHourly = 1981, 2001
	firstLight              = 1984
)

// Faults tells everything that is wrong with a plan, or nil.
func (p Plan) Faults() error {
	var faults []error
	tell := func(format string, args ...any) { faults = append(faults, fmt.Errorf(format, args...)) }
	if !(math.Abs(float64(p.Latitude)) <= 90) {
		tell("latitude %g deg is not possible: it lies between -90 and 90; north counts positive", float64(p.Latitude))
	}
	if !(math.Abs(float64(p.Longitude)) <= 180) {
		tell("longitude %g deg is not possible: it lies between -180 and 180; east counts positive", float64(p.Longitude))
	}
	first := firstDaily
	if p.Step == weather.Hourly {
		first = firstHourly
	}
	switch {
	case p.From > p.To:
		tell("the years run backwards: from %d to %d", p.From, p.To)
	case p.From < first:
		tell("from %d: the service's %s values begin in %d", p.From, p.Step, first)
	}
	if p.To >= p.ThisYear {
		tell("to %d: only years that are over are fetched, the last is %d", p.To, p.ThisYear-1)
	}
	return errors.Join(faults...)
}

// parameters are asked for, under the service's names; up to 15 for hours and 20 for days
// are allowed in one question (from memory).
func (p Plan) parameters() []string {
	if p.Step == weather.Hourly {
		return []string{"ALLSKY_SFC_SW_DWN", "ALLSKY_SFC_SW_DNI", "ALLSKY_SFC_SW_DIFF", "T2M", "RH2M", "WS10M", "PRECTOTCORR", "PS"}
	}
	return []string{"ALLSKY_SFC_SW_DWN", "ALLSKY_SFC_SW_DIFF", "T2M", "T2M_MIN", "T2M_MAX", "T2MDEW", "RH2M", "WS10M", "PRECTOTCORR", "PS"}
}

// standard names the time that days or hours follow. Hours in UTC begin with the year;
// in solar hours each year would begin in the middle of a day.
func (p Plan) standard() string {
	if p.Step == weather.Hourly {
		return "UTC"
	}
	return "LST"
}

// question gives the path and query for a year.
func (p Plan) question(year int) string {
	q := url.Values{
		"parameters":    {strings.Join(p.parameters(), ",")},
		"community":     {"RE"}, // renewable energy: light in kWh
		"latitude":      {fmt.Sprintf("%.4f", float64(p.Latitude))},
		"longitude":     {fmt.Sprintf("%.4f", float64(p.Longitude))},
		"start":         {fmt.Sprintf("%04d0101", year)},
		"end":           {fmt.Sprintf("%04d1231", year)},
		"format":        {"CSV"},
		"header":        {"true"},
		"time-standard": {p.standard()},
	}
	return "/api/temporal/" + p.Step.String() + "/point?" + q.Encode()
}

// folder names the folder of the plan's years: what was asked for, and of whom, apart from
// the year.
func (p Plan) folder(cache, base string) string {
	sum := sha256.Sum256([]byte(base + p.question(0)))
	return filepath.Join(cache, fmt.Sprintf("%s_%.4f_%.4f_%x", p.Step, float64(p.Latitude), float64(p.Longitude), sum[:4]))
}
