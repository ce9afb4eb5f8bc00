package comfort

import (
	"fmt"

	"suffice/quantity"
	"suffice/sheet"
)

// Sheets lists the worked calculations of this package.
func Sheets() []sheet.Sheet { return []sheet.Sheet{bandSheet()} }

// usualCategory is taken where none is given: people of ordinary expectations.
func usualCategory(s Standard) Category {
	if s == ASHRAE55 {
		return "80"
	}
	return "II"
}

func bandSheet() sheet.Sheet {
	return sheet.Sheet{
		Name: "comfort-band", Title: "The band in which a room is comfortable, by the weather of the last days",
		Inputs: []sheet.Input{
			{Name: "outside_running_mean", Unit: "degC", Default: "18 degC", Low: sheet.At(-60), High: sheet.At(60), Meaning: "of the daily means outside, the last days counting most"},
			{Name: "days", Kind: sheet.List, Unit: "degC", Maybe: true, Low: sheet.At(-60), High: sheet.At(60), Meaning: "instead of it, the daily means of the last seven days, yesterday first"},
			{Name: "standard", Kind: sheet.Text, Default: string(EN16798), Choices: []string{string(EN16798), string(ASHRAE55)}, Meaning: "whose band"},
			{Name: "category", Kind: sheet.Text, Maybe: true, Choices: []string{"I", "II", "III", "90", "80"}, Meaning: "I, II or III of en16798 (II where not given), 90 or 80 of ashrae55 (80 where not given)"},
			{Name: "temperature", Unit: "degC", Maybe: true, Low: sheet.At(-60), High: sheet.At(60), Meaning: "of the room, mean of air and surfaces, to be judged"},
		},
		Sources: []string{"en16798-1: annex B, adaptive band and running mean", "ashrae55: 5.4, adaptive method"},
		Cautions: []string{
			"For rooms without machines for cooling, whose people can open windows and change their clothes. The old, the ill and small children need the narrow category and suffer in heat and cold first.",
		},
		Do: workBand,
	}
}

func workBand(c *sheet.Calc) {
	mean := c.Number("outside_running_mean")
	if c.Given("days") {
		days := c.Numbers("days")
		if len(days) != 7 {
			c.Fail("days: %d daily means were given: the running mean takes seven, yesterday first", len(days))
			return
		}
		if c.Chosen("outside_running_mean") {
			c.Fail("outside_running_mean and days say the same thing: give one of them")
			return
		}
		mean = c.Step("running mean", "Trm = (T1 + 0.8 T2 + 0.6 T3 + 0.5 T4 + 0.4 T5 + 0.3 T6 + 0.2 T7)/3.8",
			fmt.Sprintf("of %.4g", days), float64(RunningMean([7]float64(days))), "degC")
	}
	s := Standard(c.Text("standard"))
	category := usualCategory(s)
	if c.Given("category") {
		category = Category(c.Text("category"))
	}
	b, err := At(s, category, quantity.Celsius(mean))
	if err != nil {
		c.Fail("%v", err)
		return
	}
	r := s.rule()
	held := mean - float64(b.Beyond)
	c.Step("neutral", fmt.Sprintf("Tn = %g Trm + %g", r.rise, r.at), fmt.Sprintf("%g·%.4g + %g", r.rise, held, r.at), float64(b.Neutral), "degC")
	c.Step("lower limit", "Tn less the category's width below", fmt.Sprintf("%.4g − %.4g", float64(b.Neutral), float64(b.Neutral-b.Low)), float64(b.Low), "degC")
	c.Step("upper limit", "Tn and the category's width above", fmt.Sprintf("%.4g + %.4g", float64(b.Neutral), float64(b.High-b.Neutral)), float64(b.High), "degC")
	c.Result("neutral", float64(b.Neutral), "degC")
	c.Result("low", float64(b.Low), "degC")
	c.Result("high", float64(b.High), "degC")
	c.Result("running_mean", mean, "degC")
	c.ResultText("category", string(category))
	if b.Beyond != 0 {
		c.Caution(fmt.Sprintf("The standard gives a band for running means from %g to %g degC; at %.4g degC the band of the nearer end stands.", r.from, r.to, mean))
	}
	if c.Given("temperature") {
		c.ResultText("verdict", b.verdict(quantity.Celsius(c.Number("temperature"))))
	}
}

// verdict says in words how a temperature lies to the band.
func (b Band) verdict(t quantity.Celsius) string {
	switch {
	case t < b.Low:
		return fmt.Sprintf("too cold by %.1f K", float64(b.Low.Above(t)))
	case t > b.High:
		return fmt.Sprintf("too hot by %.1f K", float64(t.Above(b.High)))
	}
	return "comfortable"
}
