package web

import "net/http"

func waterPage(v *view, _ *http.Request) shown {
	title := v.Say("water.title")
	if !v.hasWater() {
		return shown{Here: "/water", Title: title, Body: absent(v, title, v.Say("water.absent"))}
	}
	list, err := v.tallies(v.roofs, v.tanks, v.taps)
	if err != nil {
		return v.faulty(err)
	}
	return shown{Here: "/water", Title: title, Body: waterBody(v, list)}
}

// faulty is the page of a fault that is the program's own.
func (v *view) faulty(err error) shown {
	return shown{Status: http.StatusInternalServerError, Title: v.Say("fault.title"), Body: absent(v, v.Say("fault.title"), v.Say("fault.own", "fault", err))}
}
