package hourly

import "suffice/sheet"

// Explain works one hour of the stated start as sheets.
func (r *Run) Explain(hour int) ([]sheet.Worked, error) { return nil, nil }
