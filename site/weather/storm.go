package weather

import "math"

// stormRate is the intensity, mm/h, at which a day's rain is laid into hours: that of
// loustau for days of 2 to 46 mm.
const stormRate = 2.0

// storm lays a day's rain, mm, into hours: one storm at about 2 mm/h, without a break
// and within the day, which begins at an hour drawn from the date alone. A day of up to
// 2 mm rains in one hour, one above 48 mm all day long. The day's total is kept; the
// intensity is invented.
func storm(hours []float64, total float64, day int) {
	if !(total > 0) {
		return
	}
	n := int(max(1, min(24, math.Ceil(total/stormRate))))
	begin := int(mix(uint64(day)) % uint64(25-n))
	last := total
	for h := begin; h < begin+n-1; h++ {
		hours[h] = total / float64(n)
		last -= hours[h]
	}
	hours[begin+n-1] = max(0, last)
}

// mix turns a day's number into bits that look drawn: the finaliser of splitmix64
// (Steele, Lea & Flood 2014, variant 13 of Stafford).
func mix(x uint64) uint64 {
	x += 0x9e3779b97f4a7c15
	x = (x ^ x>>30) * 0xbf58476d1ce4e5b9
	x = (x ^ x>>27) * 0x94d049bb133111eb
	return x ^ x>>31
}
