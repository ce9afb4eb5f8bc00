package weather

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
