package power

import "suffice/quantity"

// plain is anyHour where nothing waits, no generator runs or has to, everybody asked for is let in and the
// inverter carries them all: nearly every hour of a house that suffices. It leaves everything as it was, and says
// false, where the hour is none of these. A test holds it to anyHour to the last bit.
func (y *System) plain(s *SystemState, in *SystemIn, out *SystemOut) bool {
	w := in.Wants
	if s.Tasks.waiting|w.putOff != 0 || s.Generator.Running {
		return false
	}
	h, faded := y.Battery.fade(&s.Battery)
	must := float64(w.Now[Must])
	asked := float64(in.Services[WaterPump]+in.Services[Treatment]+in.Services[HotPump]+in.Services[FlushPump]) + must
	if free := w.Now[Should] + (w.Now[Could] + in.HotWater); free != 0 {
		if y.keptOut(in, h.sum) != 0 {
			return false
		}
		asked += float64(free)
	}
	if asked == 0 || asked > float64(y.Inverter.Continuous) || y.charger > 0 && y.low(h) {
		return false
	}
	panels := float64(in.Panels)
	used := panels
	if used > y.most {
		used = y.most
	}
	sun, drawn := used*y.Controller.Efficiency, y.Inverter.Draw(asked)
	over := sun - drawn
	if over < 0 {
		most := y.Battery.downTo(y.Battery.stop(in.Temperature), h)
		if drawn > sun+most {
			return false
		}
		discharged := -over
		if discharged > most { // by the rounding of sun + most - sun
			discharged = most
		}
		over = 0
		out.Charged, out.Discharged, out.BatteryLoss = 0, quantity.WattHours(discharged), 0
		out.Charge = y.Battery.move(&s.Battery, h, discharged)
	} else {
		charged := y.Battery.acceptable(h, in.Temperature)
		if charged > over {
			charged = over
		}
		over -= charged
		stored := charged * y.Battery.Efficiency
		out.Charged, out.Discharged, out.BatteryLoss = quantity.WattHours(charged), 0, quantity.WattHours(charged-stored)
		out.Charge = y.Battery.move(&s.Battery, h, 0-stored)
	}
	curtailed := panels - used + over*y.perPass
	out.Income, out.Curtailed = in.Panels.For(1), quantity.WattHours(curtailed)
	out.ControllerLoss = quantity.WattHours(panels - curtailed - (sun - over))
	out.SelfDischarge = quantity.WattHours(faded)
	out.Drawn, out.Delivered, out.InverterLoss = quantity.WattHours(drawn), quantity.WattHours(asked), quantity.WattHours(drawn-asked)
	out.Met[Must], out.Met[Should], out.Met[Could], out.HotWater = w.Now[Must], w.Now[Should], w.Now[Could], in.HotWater
	return true
}
