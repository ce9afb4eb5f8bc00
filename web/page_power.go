package web

import "net/http"

func powerPage(v *view, _ *http.Request) shown {
	title := v.Say("power.title")
	if !v.hasPower() {
		return shown{Here: "/power", Title: title, Body: absent(v, title, v.Say("power.absent"))}
	}
	list, err := v.tallies(v.panels, v.battery, v.sharing)
	if err != nil {
		return v.faulty(err)
	}
	var heat []tally
	if v.hasHeat() {
		if heat, err = v.tallies(v.store, v.bottles); err != nil {
			return v.faulty(err)
		}
	}
	return shown{Here: "/power", Title: title, Body: powerBody(v, list, heat)}
}
