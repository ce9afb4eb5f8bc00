package power

import "suffice/quantity"

// Step moves the supply on by one hour and writes what it did to out, whose sentences of
// conservation stand at SystemOut. Who gets power, in this order: the services; what must
// run, with tasks on their last day; what should run; what could run and the electric
// element; these from the battery only at or above their charge. Then, from sun alone: tasks
// that had waited; the battery; what was kept out before. The rest is curtailed.
//
// What stood in out before must be the zero SystemOut or an earlier hour's.
func (y *System) Step(s *SystemState, in *SystemIn, out *SystemOut) {
	if !out.Plain {
		*out = SystemOut{ServiceShare: 1, Plain: true}
	}
	if !y.plain(s, in, out) {
		y.anyHour(s, in, out)
	}
}

// anyHour lets any hour pass. It is one flat list, and out is written in place, because it is
// lived hundreds of thousands of times; what is rare stands in functions of its own.
func (y *System) anyHour(s *SystemState, in *SystemIn, out *SystemOut) {
	*out = SystemOut{ServiceShare: 1}
	b, wants := &y.Battery, in.Wants
	h, faded := b.fade(&s.Battery)

	services := float64(in.Services[WaterPump] + in.Services[Treatment] + in.Services[HotPump] + in.Services[FlushPump])
	must, mayRun := float64(wants.Now[Must]), wants.mayRun
	if s.Tasks.waiting|wants.putOff != 0 {
		var due float64
		due, mayRun = y.wait(&s.Tasks, in, out)
		must += due
	}
	asked, kept := services+must, 0.0
	if free := wants.Now[Should] + (wants.Now[Could] + in.HotWater); free != 0 {
		kept = y.keptOut(in, h.sum)
		asked += float64(free) - kept
	}

	panels := float64(in.Panels)
	used := panels
	if used > y.most {
		used = y.most
	}
	sun := used * y.Controller.Efficiency
	c, bus, most := carried{asked, y.Inverter.Draw(asked)}, sun, 0.0
	plain := c.drawn <= sun && asked <= float64(y.Inverter.Continuous) && asked != 0
	if !plain {
		most = b.deliverable(h, in.Temperature)
	}
	if y.charger > 0 && (c.drawn > sun+most || (s.Generator.Running || y.low(h))) {
		bus = y.generate(s, in, generating{asked, services + must, sun, h}, out)
	}
	if !plain && (c.drawn > bus+most || asked > float64(y.Inverter.Continuous) || asked == 0) {
		c = y.Inverter.carry(asked, bus+most)
	}
	if c.load == asked && kept == 0 {
		out.Met[Must], out.Met[Should], out.Met[Could] = quantity.WattHours(must), wants.Now[Should], wants.Now[Could]
		out.HotWater = in.HotWater
	} else {
		y.share(in, sharing{services, must, h.sum}, c.load, c.load == asked, out)
	}

	discharged, over, charged := c.drawn-bus, 0.0, 0.0
	if discharged > most { // by the rounding of bus + most - bus
		discharged = most
	}
	if discharged <= 0 {
		if s.Tasks.waiting&mayRun != 0 && !s.Generator.Running {
			c = y.makeUp(&s.Tasks, in, mayRun, c, bus, out)
		}
		discharged, over = 0, bus-c.drawn
		charged = b.acceptable(h, in.Temperature)
		if charged > over {
			charged = over
		}
		over -= charged
		if over > 0 && kept > 0 {
			c = y.spare(in, h.sum, c, bus-charged, out)
			over = bus - charged - c.drawn
		}
	}
	stored := charged * b.Efficiency
	out.Charge = b.move(&s.Battery, h, discharged-stored)

	curtailed := panels - used + over*y.perPass
	out.Income, out.Curtailed = in.Panels.For(1), quantity.WattHours(curtailed)
	out.ControllerLoss = quantity.WattHours(panels - curtailed - (sun - over))
	out.Charged, out.Discharged = quantity.WattHours(charged), quantity.WattHours(discharged)
	out.BatteryLoss, out.SelfDischarge = quantity.WattHours(charged-stored), quantity.WattHours(faded)
	out.Drawn, out.Delivered = quantity.WattHours(c.drawn), quantity.WattHours(c.load)
	out.InverterLoss = quantity.WattHours(c.drawn - c.load)
}

// keptOut gives what should or could run and is not let in at what the wells hold, Wh.
func (y *System) keptOut(in *SystemIn, sum float64) float64 {
	var kept quantity.WattHours
	if sum < y.letCould {
		kept = in.Wants.Now[Could] + in.HotWater
	}
	if sum < y.letShould {
		kept = in.Wants.Now[Should] + kept
	}
	return float64(kept)
}

// sharing is what share needs to know of what was asked, W, and of the wells, Wh.
type sharing struct{ services, must, sum float64 }

// share hands what the inverter carries to what was let in, by need. Whole says that it
// carries all of it.
func (y *System) share(in *SystemIn, a sharing, load float64, whole bool, out *SystemOut) {
	left := load
	take := func(wanted quantity.WattHours) quantity.WattHours {
		got := wanted
		if !whole {
			got = quantity.WattHours(min(left, float64(wanted)))
			left -= float64(got)
		}
		return got
	}
	if got := take(quantity.WattHours(a.services)); float64(got) < a.services {
		out.ServiceShare = float64(got) / a.services
		out.ServiceShort = quantity.WattHours(a.services) - got
	}
	out.Met[Must] = take(quantity.WattHours(a.must))
	out.Short[Must] += quantity.WattHours(a.must) - out.Met[Must]
	if a.sum >= y.letShould {
		out.Met[Should] = take(in.Wants.Now[Should])
	}
	out.Short[Should] += in.Wants.Now[Should] - out.Met[Should]
	if a.sum >= y.letCould {
		out.Met[Could] = take(in.Wants.Now[Could])
		out.HotWater = take(in.HotWater)
	}
	out.Short[Could] += in.Wants.Now[Could] - out.Met[Could]
	if asked := a.services + a.must + float64(in.Wants.Now[Should]+(in.Wants.Now[Could]+in.HotWater)) - y.keptOut(in, a.sum); asked > float64(y.Inverter.Continuous) {
		out.OverLimit = quantity.WattHours(asked - float64(y.Inverter.Continuous))
	}
}

// spare carries what was kept out, from direct current, W, that the battery cannot take.
func (y *System) spare(in *SystemIn, sum float64, c carried, supply float64, out *SystemOut) carried {
	left := y.Inverter.Most(supply) - c.load
	if left <= 0 {
		return c
	}
	load := c.load
	take := func(wanted quantity.WattHours) quantity.WattHours {
		got := min(left, float64(wanted))
		left -= got
		load += got
		return quantity.WattHours(got)
	}
	if sum < y.letShould {
		got := take(in.Wants.Now[Should])
		out.Met[Should] += got
		out.Short[Should] -= got
	}
	if sum < y.letCould {
		got := take(in.Wants.Now[Could])
		out.Met[Could] += got
		out.Short[Could] -= got
		out.HotWater = take(in.HotWater)
	}
	return y.Inverter.fits(load, supply)
}
