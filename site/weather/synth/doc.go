// Package synth makes years of weather that never were: from monthly normals or fitted
// to a record, with wet and dry, dull and bright, warm and cold days that follow each
// other as they do, and with years that differ as much as years do. It also stretches a
// short sky over a long gauge, changes a record by a stated climate, and lays the years
// of a record in another order.
//
// Checked against: gauges of nine stations, fitted on the odd years and judged on the
// even ones and the other way, a plain daily chain beside it (docs/made-weather-judged.md); the
// interval of redrawn fits, where the truth is known (docs/made-weather-calibrated.md); the same gauges
// beside what their monthly normals alone make (docs/made-weather-normals.md); measured light
// of thirteen stations and sunshine hours of three against light made from temperature
// and sunshine (docs/sun-made-errors.md); skies that were known beside stretched ones
// (docs/stretched-errors.md); made skies beside their records (docs/made-sky-errors.md); its own
// moments, which sampling must give back (laws_test.go).
//
// Left out: what several places share (each place is made alone); storms beyond what a mixture of
// exponential distributions gives; seasons that begin and end within a month; cold, warm, dull and
// bright years beyond what the days' own memory and the rain make; wind that knows of the rest, where
// it comes from normals; trends, but for those that Change is told.
package synth
