package house

import "strings"

// The patterns of values that have a way of writing of their own, as JSON Schema has them.
// They let through a little more than read does: a day 31 of June, hours that overlap.

func (*Clock) pattern() string    { return around(`UTC([+-][0-9]{1,2}(:(00|15|30|45))?)?`) }
func (*MonthDay) pattern() string { return around(`[0-9]{1,2}-[0-9]{1,2}`) }
func (*Money) pattern() string    { return around(`[0-9]+(\.[0-9]+)? ?[A-Z]{3}`) }
func (*Amount) pattern() string   { return aNumber + `[^0-9.,].*$` }
func (*Level) pattern() string    { return aNumber + `[^0-9.,].*$` }
func (*Capacity) pattern() string { return aNumber + `[^0-9.,].*$` }
func (*Growth) pattern() string {
	return "(" + aNumber + `[^0-9.,].*$|` + around("("+strings.Join(rateNames(), "|")+")") + ")"
}

func (*Hours) pattern() string {
	const span = `[0-9]{1,2}-[0-9]{1,2}`
	return around(span + `(\s+` + span + `)*`)
}

func (*Days) pattern() string {
	names := "(" + strings.Join(weekdays, "|") + ")"
	return around("(every day|workdays|weekends|" + names + `(\s+` + names + ")*)")
}

func (*Kinds) pattern() string {
	names := "(" + strings.Join(kindNames(), "|") + ")"
	return around("(all|" + names + `(\s+` + names + ")*)")
}

// around lets blanks stand before and behind, as read does.
func around(pattern string) string { return `^\s*` + pattern + `\s*$` }
