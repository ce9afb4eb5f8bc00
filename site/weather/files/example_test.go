package files_test

import (
	"fmt"

	"suffice/site/weather"
	"suffice/site/weather/files"
)

func ExampleDemo() {
	record, err := files.Demo()
	if err != nil {
		panic(err)
	}
	held := weather.Summarise(record)
	fmt.Printf("%d days from %s, %.0f mm of rain a year, the driest %d with %.0f mm, %d days without rain\n",
		held.Days, held.First, held.Rain.Mean, held.Rain.MinYear, held.Rain.Min, *held.LongestDry)
	hours, report, err := weather.Complete(record, weather.Options{})
	if err != nil {
		panic(err)
	}
	fmt.Printf("%d hours of %d complete years\n", len(hours.Rain), len(report.Years))
	// Output:
	// 13515 days from 1984-01-01, 494 mm of rain a year, the driest 1990 with 288 mm, 172 days without rain
	// 324360 hours of 37 complete years
}
