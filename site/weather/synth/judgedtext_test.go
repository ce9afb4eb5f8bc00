package synth_test

const judgedHead = `# Made years beside years that were kept back

Written by a test (go test ./site/weather/synth -run Judged -update). Each gauge's **odd years** are fitted, its **even years**
judged. 200 records as long as the real one are made; of each, the even years are taken and laid end to end, as with the real record, so that
6-, 12- and 24-month sums cross the same joints. The tank begins full, takes all rain of the roof, and is as large as it must be to
meet the whole use on 95 % of days; the use is half of the fitted years' mean rain.

- **made**: every record comes from its own fit, to as many odd years drawn with replacement: a record of 27 years knows the
  deviation of its yearly rain to a seventh only, and whoever makes weather of it should see that.
- **made, one fit**: all records come from the one fit to the odd years.
- **plain daily chain**: the same chain and amounts without the slow index.

Nothing was tuned by station. The form of the index (that it moves daily, fades no faster than in half a month and acts by season) was settled
while looking at these tables: with an index that was as strong all year, six figures lay outside, Melbourne's tank among them. So the even years were
not wholly unseen, and a new station is the better judge. The correlation of a year with the next even one is shown since nothing was fitted to it: it tells whether years keep something
of each other that the index does not.

`

// why gives the reason for what lies outside, station by station, as far as it is known.
var why = map[string]string{
	"Houston": `Outside: the deviation. The odd years of this gauge deviate by half as much again as its even ones, which chance does to 3 of 100 pairs of halves (F
ratio 2.4); what is fitted to one half has to miss the other, on the side of too hard droughts. The correlation of one even year with the next is outside as
well: of the even years from 1978 to 1996 all but one are drier than the mean, of those from 1998 to 2008 all but one wetter, and an index that
fades within weeks does not make that.`,
	"Los Angeles": `Outside: the driest half-years, 3.3 mm instead of 4.7 or more. The fitted years' own figure, 7.2, lies well inside: the even years had the drier summers. It is a
difference of some millimetres, and the tank lies inside.`,
	"New York": `Outside: the deviation and, with it, the 12-month sums. The odd years hold the wettest year by far (1983) and deviate by a third more than
the even ones, which chance does to 1 of 100 pairs of halves (F ratio 1.9). The made droughts are therefore too hard, not too mild.`,
}
