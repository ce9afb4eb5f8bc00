package weather

import (
	"fmt"
	"math"
	"strings"

	"suffice/quantity"
)

// NominalYear is the year on which a typical year is put: it has 365 days and begins
// on a Monday.
const NominalYear = 2001

// Leap reports whether a year of the Gregorian calendar has 366 days.
func Leap(year int) bool { return year%4 == 0 && (year%100 != 0 || year%400 == 0) }

// DaysIn gives the days of a year.
func DaysIn(year int) int {
	if Leap(year) {
		return 366
	}
	return 365
}

var monthDays = [13]int{0, 31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}

// MonthDays gives the days of a month, 1 to 12.
func MonthDays(year, month int) int {
	if month == 2 && Leap(year) {
		return 29
	}
	return monthDays[month]
}

// daysBefore gives the days of the years 1 to year-1.
func daysBefore(year int) int {
	y := year - 1
	return 365*y + y/4 - y/100 + y/400
}

// DayNumber counts the days from 1 January of the year 1, which is number 0, in the
// Gregorian calendar, for dates of the year 1 and later.
func DayNumber(year, month, date int) int {
	n := daysBefore(year) + date - 1
	for m := 1; m < month; m++ {
		n += MonthDays(year, m)
	}
	return n
}

// DayOf gives the day of a number that DayNumber gave.
func DayOf(number int) Day {
	year := number*400/146097 + 1 // 146 097 days in 400 years; off by one at most
	for daysBefore(year) > number {
		year--
	}
	for daysBefore(year+1) <= number {
		year++
	}
	rest := number - daysBefore(year)
	day := Day{Year: int32(year), DayOfYear: int16(rest + 1), Weekday: int8((number + 1) % 7), Month: 1}
	for rest >= MonthDays(year, int(day.Month)) {
		rest -= MonthDays(year, int(day.Month))
		day.Month++
	}
	day.Date = int8(rest + 1)
	return day
}

// Number gives the day's number, as DayNumber counts.
func (d Day) Number() int { return DayNumber(int(d.Year), int(d.Month), int(d.Date)) }

// ValidDate reports whether there is such a day, in the years 1 to 9999.
func ValidDate(year, month, date int) bool {
	return year >= 1 && year <= 9999 && month >= 1 && month <= 12 && date >= 1 && date <= MonthDays(year, month)
}

// SolarClock gives the clock of local solar hours: longitude/15 in whole hours ahead of
// UTC, as reanalysis records count them.
func SolarClock(longitude quantity.Degrees) float64 { return math.Round(float64(longitude) / 15) }

// dateText writes a day's number as 2014-01-31.
func dateText(number int) string {
	d := DayOf(number)
	return fmt.Sprintf("%04d-%02d-%02d", d.Year, d.Month, d.Date)
}

// when writes the time at which row i of a record begins, RFC 3339 where the record is
// hourly.
func (r *Record) when(i int) string {
	if r.Step == Daily {
		return dateText(r.Start + i)
	}
	hour := r.StartHour + i
	zone := "Z"
	if c := r.Place.Clock; c != 0 {
		minutes := int(math.Round(math.Abs(c) * 60))
		zone = fmt.Sprintf("%c%02d:%02d", "+-"[b2i(c < 0)], minutes/60, minutes%60)
	}
	return fmt.Sprintf("%sT%02d:00:00%s", dateText(r.Start+hour/24), hour%24, zone)
}

func b2i(b bool) int {
	if b {
		return 1
	}
	return 0
}

// yearsText writes years as 1948-1953, 1956.
func yearsText(years []int32) string {
	var parts []string
	for i := 0; i < len(years); {
		j := i
		for j+1 < len(years) && years[j+1] == years[j]+1 {
			j++
		}
		part := fmt.Sprint(years[i])
		if j > i {
			part += fmt.Sprintf("-%d", years[j])
		}
		parts, i = append(parts, part), j+1
	}
	return strings.Join(parts, ", ")
}
