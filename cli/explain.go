package cli

import (
	"fmt"

	"suffice/hourly"
)

type explainJSON struct {
	Hour   string       `json:"hour"`
	Sheets []workedJSON `json:"sheets"`
}

// explain shows the working of one hour: the same functions the hour called, with its numbers.
func explain(r *hourly.Run, when string, asJSON bool, s Streams) error {
	hour, err := r.HourAt(when)
	if err != nil {
		return fmt.Errorf("--explain: %w", err)
	}
	worked, err := r.Explain(hour)
	if err != nil {
		return ownFault{err}
	}
	name := string(r.AppendHour(nil, hour))
	if asJSON {
		out := explainJSON{Hour: name, Sheets: []workedJSON{}}
		for i := range worked {
			out.Sheets = append(out.Sheets, sheetJSON(&worked[i]))
		}
		return writeJSON(s.Out, out)
	}
	fmt.Fprintf(s.Out, "%s: the hour that begins at %s, standard time\n\n", r.House.Name, name)
	for i := range worked {
		printWorked(s.Out, &worked[i])
		fmt.Fprintln(s.Out)
	}
	return nil
}
