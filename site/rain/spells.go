package rain

// A Spell is a run of days.
type Spell struct{ First, Days int }

// DrySpells gives the runs of days on which less than a depth, mm, fell. A missing day (not a number) ends a spell.
func DrySpells(daily []float64, below float64) []Spell { return nil }
