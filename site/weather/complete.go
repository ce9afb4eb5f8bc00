package weather

import "errors"

// Complete makes whole hours without gaps from one record.
func Complete(r *Record, o Options) (*Hours, Report, error) {
	return nil, Report{}, errors.New("weather: not yet written")
}

// Combine takes the rain of a gauge record and everything else of a sky record.
func Combine(sky, gauge *Record, o Options) (*Hours, Report, error) {
	return nil, Report{}, errors.New("weather: not yet written")
}
