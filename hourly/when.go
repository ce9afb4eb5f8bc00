package hourly

import (
	"fmt"
	"strconv"
	"time"
)

// AppendHour appends the beginning of an hour as 2003-08-14T15, in standard time.
func (r *Run) AppendHour(to []byte, hour int) []byte {
	d := r.Weather.Days[hour/24]
	to = strconv.AppendInt(to, int64(d.Year), 10)
	for i, n := range [3]int{int(d.Month), int(d.Date), hour % 24} {
		to = append(to, "--T"[i])
		if n < 10 {
			to = append(to, '0')
		}
		to = strconv.AppendInt(to, int64(n), 10)
	}
	return to
}

// HourAt finds the hour that a person wrote as 2003-08-14T15 or 2003-08-14 15:00.
func (r *Run) HourAt(text string) (int, error) {
	var at time.Time
	var err error
	for _, form := range []string{"2006-01-02T15", "2006-01-02T15:04", "2006-01-02 15", "2006-01-02 15:04"} {
		if at, err = time.Parse(form, text); err == nil {
			break
		}
	}
	if err != nil {
		return 0, fmt.Errorf("%q is no hour: write it as 2003-08-14T15", text)
	}
	for day, d := range r.Weather.Days {
		if int(d.Year) == at.Year() && int(d.Month) == int(at.Month()) && int(d.Date) == at.Day() {
			return 24*day + at.Hour(), nil
		}
	}
	days := r.Weather.Days
	return 0, fmt.Errorf("%s is not in the weather lived through: it has days from %d-%02d-%02d to %d-%02d-%02d",
		text, days[0].Year, days[0].Month, days[0].Date, days[len(days)-1].Year, days[len(days)-1].Month, days[len(days)-1].Date)
}
