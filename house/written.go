package house

// Clock is hours ahead of UTC, standard time all year.
type Clock float64

// Hours is the hours of the clock in which something happens; hour i lasts from i to i+1.
type Hours [24]bool

// Days is the days of the week on which something happens; day 0 is Sunday.
type Days [7]bool

// A MonthDay is a day that comes back every year.
type MonthDay struct{ Month, Day int }

// Money is an amount in a currency, by its ISO 4217 code.
type Money struct {
	Amount   float64
	Currency string
}

// An Amount is a daily use of water.
type Amount struct {
	Litres    float64 // L/d, of one person or of the whole house
	PerPerson bool
}
