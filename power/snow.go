package power

import (
	"math"

	"suffice/quantity"
)

// Rules for snow on panels. Sliding after Marion, Schaefer, Caine & Sanchez (2013)
// [marion-2013, remembered]: fitted there to open racks in two snowy states, in tenths of the
// row; the cover threshold is 1 cm of new snow, taken as 1 mm of water.
const (
	snowBelow    = 1.0   // degC of air below which precipitation falls as snow; common practice, no source
	snowCovers   = 1.0   // mm of water that hide the cells; [marion-2013] 1 cm of snow, ten to one assumed
	snowSlides   = -80.0 // W/m2K; snow slides when the air is warmer than light over this
	snowSlide    = 0.197 // share of the row freed in an hour, times the sine of the slope
	snowMelts    = 0.17  // mm of water per hour and kelvin above freezing: 4 mm/K d, common practice, no source
	snowFlattest = 5.0   // deg; on flatter panels snow melts and never slides; assumed
)

// SnowState is the snow on an array. The zero value is a clear array.
type SnowState struct {
	Lying float64 // mm of water on the covered part
	Cover float64 // share of the array that is covered, 0 to 1
}

// slideShare gives what share of the array a sliding hour frees.
func slideShare(slope quantity.Degrees) float64 {
	if slope < snowFlattest {
		return 0
	}
	return snowSlide * math.Sin(float64(slope.Radians()))
}

// Snow moves the snow on by one hour and gives the share of the array that it keeps dark:
// snow falls in cold air, hides everything once a millimetre of water lies, slides off a
// slope by shares when air and light warm it, and melts in air above freezing. Light is the
// total on the plane.
func (a *Array) Snow(s *SnowState, light quantity.Irradiance, ambient quantity.Celsius, precipitation quantity.Millimetres) float64 {
	return a.snow(s, float64(light), float64(ambient), float64(precipitation))
}

func (a *Array) snow(s *SnowState, light, ambient, precipitation float64) float64 {
	if precipitation > 0 && ambient < snowBelow {
		s.Lying += precipitation
		if s.Lying >= snowCovers {
			s.Cover = 1
		}
	}
	if s.Lying == 0 {
		return 0
	}
	dark := s.Cover
	if dark > 0 && ambient > light/snowSlides { // [marion-2013]
		s.Cover -= a.slide
	}
	if ambient > 0 {
		s.Lying -= snowMelts * ambient
	}
	if s.Lying <= 0 || s.Cover <= 0 && dark > 0 {
		*s = SnowState{}
	}
	return dark
}
