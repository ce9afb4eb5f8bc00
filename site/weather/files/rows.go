package files

import (
	"fmt"
	"slices"
	"strings"

	"suffice/site/weather"
)

// stamps says in which columns of a row its time stands.
type stamps struct {
	year, month, date, dayOfYear, hour, iso int // -1 where there is none
	step                                    weather.Step
}

// stampNames are the heads of columns that hold the time, in capitals.
var stampNames = []string{"YEAR", "MO", "DY", "DOY", "HR", "DATE"}

func isStamp(name string) bool { return slices.Contains(stampNames, strings.ToUpper(name)) }

// splitNames gives the heads of the columns.
func splitNames(line string) []string {
	names := strings.Split(line, ",")
	for i := range names {
		names[i] = strings.Trim(strings.TrimSpace(names[i]), `"`)
	}
	return names
}

// stampsOf finds the columns of the time: YEAR with MO and DY, or with DOY, and HR for
// hours; or one DATE as 2014-01-31. A DATE beside a YEAR is not looked at.
func stampsOf(head []string) (stamps, error) {
	find := func(name string) int {
		return slices.IndexFunc(head, func(h string) bool { return strings.EqualFold(h, name) })
	}
	st := stamps{year: find("YEAR"), month: find("MO"), date: find("DY"), dayOfYear: find("DOY"), hour: find("HR"), iso: find("DATE"), step: weather.Daily}
	if st.hour >= 0 {
		st.step = weather.Hourly
	}
	switch {
	case st.year >= 0 && st.month >= 0 && st.date >= 0, st.year >= 0 && st.dayOfYear >= 0, st.year < 0 && st.iso >= 0 && st.hour < 0:
		return st, nil
	}
	return st, fmt.Errorf("the columns do not tell the time: there must be YEAR,MO,DY or YEAR,DOY, with HR for hours, or date")
}

// of gives the row's time in steps from the calendar's beginning.
func (st *stamps) of(row []string) (int, error) {
	year, month, date := 0, 1, 1
	var err error
	read := func(at, low, high int, into *int) {
		if err == nil && at >= 0 {
			if *into, err = whole(row[at], low, high); err != nil {
				err = fmt.Errorf("column %d: %w", at+1, err)
			}
		}
	}
	switch {
	case st.year < 0:
		year, month, date, err = isoDate(row[st.iso])
	case st.month >= 0 && st.date >= 0:
		read(st.year, 1, 9999, &year)
		read(st.month, 1, 12, &month)
		read(st.date, 1, 31, &date)
	default:
		dayOfYear := 0
		read(st.year, 1, 9999, &year)
		read(st.dayOfYear, 1, 366, &dayOfYear)
		if err == nil && dayOfYear > weather.DaysIn(year) {
			err = fmt.Errorf("%d has no day %d", year, dayOfYear)
		}
		if err == nil {
			d := weather.DayOf(weather.DayNumber(year, 1, 1) + dayOfYear - 1)
			month, date = int(d.Month), int(d.Date)
		}
	}
	if err == nil && !weather.ValidDate(year, month, date) {
		err = fmt.Errorf("there is no %04d-%02d-%02d", year, month, date)
	}
	if err != nil {
		return 0, err
	}
	day := weather.DayNumber(year, month, date)
	if st.step == weather.Daily {
		return day, nil
	}
	hour := 0
	read(st.hour, 0, 23, &hour)
	return day*24 + hour, err
}

// isoDate reads 2014-01-31.
func isoDate(text string) (year, month, date int, err error) {
	text = strings.TrimSpace(text)
	if len(text) != 10 || text[4] != '-' || text[7] != '-' {
		return 0, 0, 0, fmt.Errorf("date %q is not written as 2014-01-31", clip(text))
	}
	if year, err = whole(text[:4], 1, 9999); err == nil {
		if month, err = whole(text[5:7], 1, 12); err == nil {
			date, err = whole(text[8:], 1, 31)
		}
	}
	return year, month, date, err
}

// readRows reads the table to the end of the file.
func readRows(t *table, st stamps, fields []powerField, missing string, columns int) {
	code, codeErr := number(missing)
	t.each(columns, func(row []string) {
		stamp, err := st.of(row)
		if err != nil {
			t.fault("%w", err)
			return
		}
		if !t.row(stamp) {
			return
		}
		for i, f := range fields {
			v, err := number(row[f.at])
			if err != nil {
				t.fault("column %s: %w", t.series[i].Source, err)
			} else if codeErr != nil || v != code {
				t.set(i, v*f.scale.factor+f.scale.offset)
			}
		}
	})
}

// dateText writes a day's number as 2014-01-31.
func dateText(number int) string {
	d := weather.DayOf(number)
	return fmt.Sprintf("%04d-%02d-%02d", d.Year, d.Month, d.Date)
}
