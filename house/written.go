package house

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"suffice/people"
)

// A written value has a way of writing of its own. Read says what is wrong, or "".
type written interface {
	read(text string) string
	form() string    // how it is written, in words for a person
	pattern() string // the same as a pattern of JSON Schema
}

// Clock is hours ahead of UTC, standard time all year.
type Clock float64

func (c *Clock) form() string { return "UTC, UTC+2, UTC-3:30" }

var clockForm = regexp.MustCompile(`^UTC(?:([+-])([0-9]{1,2})(?::(00|15|30|45))?)?$`)

func (c *Clock) read(text string) string {
	m := clockForm.FindStringSubmatch(text)
	if m == nil {
		return fmt.Sprintf("%q is not a clock: write UTC and the hours ahead of it in standard time, for example UTC+2 or UTC-3:30", short(text))
	}
	hours, _ := strconv.Atoi(m[2]) // the pattern lets only digits and nothing through
	minutes, _ := strconv.Atoi(m[3])
	*c = Clock(hours) + Clock(minutes)/60
	if m[1] == "-" {
		*c = -*c
	}
	if *c < -12 || *c > 14 {
		return fmt.Sprintf("%s is no clock on earth: they run from UTC-12 to UTC+14", text)
	}
	return ""
}

// Hours is the hours of the clock in which something happens; hour i lasts from i to i+1.
type Hours [24]bool

func (h *Hours) form() string { return "6-9 19-22; 22-6 runs over midnight" }

var hourSpan = regexp.MustCompile(`^([0-9]{1,2})-([0-9]{1,2})$`)

func (h *Hours) read(text string) string {
	spans := strings.Fields(text)
	if len(spans) == 0 {
		return "names no hours: write for example 6-9 19-22"
	}
	for _, span := range spans {
		m := hourSpan.FindStringSubmatch(span)
		if m == nil {
			return fmt.Sprintf("%q is not a span of hours: write whole hours of the clock, for example 6-9 19-22", short(span))
		}
		from, _ := strconv.Atoi(m[1]) // the pattern lets only digits through
		to, _ := strconv.Atoi(m[2])
		if from > 23 || to > 24 || from == to {
			return fmt.Sprintf("%q is not a span of hours: it begins at 0 to 23 and ends at another hour up to 24", span)
		}
		for i, last := from, (to+23)%24; ; i = (i + 1) % 24 {
			if h[i] {
				return fmt.Sprintf("the hour from %d is in %q twice: let the spans not overlap", i, short(text))
			}
			h[i] = true
			if i == last {
				break
			}
		}
	}
	return ""
}

// Days is the days of the week on which something happens; day 0 is Sunday.
type Days [7]bool

func (d *Days) form() string { return "every day, workdays, weekends, or names: monday thursday" }

var weekdays = []string{"sunday", "monday", "tuesday", "wednesday", "thursday", "friday", "saturday"}

func (d *Days) read(text string) string {
	switch text {
	case "every day":
		*d = Days{true, true, true, true, true, true, true}
		return ""
	case "workdays":
		*d = Days{1: true, 2: true, 3: true, 4: true, 5: true}
		return ""
	case "weekends":
		*d = Days{0: true, 6: true}
		return ""
	}
	for _, name := range strings.Fields(text) {
		i := slices.Index(weekdays, name)
		if i < 0 {
			near := nearest(name, append([]string{"every day", "workdays", "weekends"}, weekdays...))
			return fmt.Sprintf("%q is not a day: the nearest known is %q; write every day, workdays, weekends, or names such as monday thursday", short(name), near)
		}
		d[i] = true
	}
	if *d == (Days{}) {
		return "names no days: write every day, workdays, weekends, or names such as monday thursday"
	}
	return ""
}

// A MonthDay is a day that comes back every year.
type MonthDay struct{ Month, Day int }

func (d *MonthDay) form() string { return "month-day: 12-20 is 20 December" }

var (
	monthDayForm = regexp.MustCompile(`^([0-9]{1,2})-([0-9]{1,2})$`)
	yearDayForm  = regexp.MustCompile(`^[0-9]{4}-([0-9]{1,2}-[0-9]{1,2})`)
)

func (d *MonthDay) read(text string) string {
	if m := yearDayForm.FindStringSubmatch(text); m != nil {
		return fmt.Sprintf("%q has a year, but these days come back every year: write %s", short(text), m[1])
	}
	m := monthDayForm.FindStringSubmatch(text)
	if m == nil {
		return fmt.Sprintf("%q is not a day: write month-day, so that 20 December is 12-20", short(text))
	}
	d.Month, _ = strconv.Atoi(m[1]) // the pattern lets only digits through
	d.Day, _ = strconv.Atoi(m[2])
	switch {
	case d.Month < 1 || d.Month > 12:
		return fmt.Sprintf("%q is not a day: the month comes first and is 1 to 12, so that 20 December is 12-20", text)
	case d.Day < 1 || d.Day > monthLength[d.Month]:
		return fmt.Sprintf("%q is not a day: month %d has days 1 to %d", text, d.Month, monthLength[d.Month])
	}
	return ""
}

// monthLength allows 29 February: it comes back, if not every year.
var monthLength = [13]int{0, 31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}

// Kinds is the kinds of use whose water passes a stage of treatment.
type Kinds [people.Kinds]bool

func (k *Kinds) form() string { return "all, or kinds of use: drinking washing" }

func (k *Kinds) read(text string) string {
	if text == "all" {
		*k = Kinds{true, true, true, true}
		return ""
	}
	for _, name := range strings.Fields(text) {
		i := slices.Index(kindNames(), name)
		if i < 0 {
			return fmt.Sprintf("%q is not a kind of use: the nearest known is %q; write all, or some of %s",
				short(name), nearest(name, append(kindNames(), "all")), strings.Join(kindNames(), ", "))
		}
		k[i] = true
	}
	if *k == (Kinds{}) {
		return "names no kind of use: write all, or some of " + strings.Join(kindNames(), ", ")
	}
	return ""
}

// kindNames gives the words of people.Kind in their order.
func kindNames() []string {
	var names []string
	for k := range people.Kinds {
		names = append(names, k.String())
	}
	return names
}
