package hotwater

import "suffice/quantity"

// Episodes counts runs of days on which the backup gave more than Trifle, separated by
// at least one day on which it did not. It is what people say when they say "we needed
// the gas three times that winter".
type Episodes struct {
	Trifle quantity.WattHours // heat of a day that nobody would call using the backup
}

// UsualTrifle is 0.5 kWh: a sink of hot water. Own choice, no source.
const UsualTrifle quantity.WattHours = 500

// EpisodesState is the count so far.
type EpisodesState struct {
	Count   int32 // runs begun
	Days    int32 // days in all runs
	Current int32 // days of the run now going; 0 for none
	Longest int32 // days of the longest run
}

// EndDay takes in one day's heat of the backup.
func (e Episodes) EndDay(s *EpisodesState, heat quantity.WattHours) {
	if heat <= e.Trifle {
		s.Current = 0
		return
	}
	if s.Current == 0 {
		s.Count++
	}
	s.Current++
	s.Days++
	s.Longest = max(s.Longest, s.Current)
}
