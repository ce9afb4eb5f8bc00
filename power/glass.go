package power

import "math"

// Constants of a panel's cover glass [desoto-2006, sec. 3, remembered; the same figures stand in
// the documentation of open-source solar libraries].
const (
	glassIndex      = 1.526 // refractive index of glass
	glassExtinction = 4.0   // 1/m, low-iron glass
	glassThickness  = 0.002 // m
)

// fresnel gives the reflectance of one face of glass for light across and along the plane
// of incidence [duffie-beckman, eq. 5.1.1, 5.1.2] and the cosine inside the glass.
func fresnel(cosine float64) (across, along, inside float64) {
	const n = glassIndex
	inside = math.Sqrt(1 - (1-cosine*cosine)/(n*n)) // Snell
	rs := (cosine - n*inside) / (cosine + n*inside)
	rp := (n*cosine - inside) / (n*cosine + inside)
	return rs * rs, rp * rp, inside
}

// entering gives the share of light that gets through one face and the thickness of the
// cover to the cells bonded behind it [desoto-2006, eq. 14, with the refraction angle of Snell].
func entering(cosine float64) float64 {
	across, along, inside := fresnel(cosine)
	return (1 - (across+along)/2) * math.Exp(-glassExtinction*glassThickness/inside)
}

// straight is the share that enters at right angles.
var straight = entering(1)

// angleShare gives the share of light at an angle that counts, against straight light:
// 1 straight on, 0 along the plane or behind it.
func angleShare(cosine float64) float64 {
	if cosine <= 0 {
		return 0
	}
	return entering(cosine) / straight
}

// skyAngle gives the angle, deg, of a beam that loses as much as light from a uniform sky
// on a slope in deg [brandemuehl-beckman-1980; duffie-beckman, eq. 5.4.2, remembered].
func skyAngle(slope float64) float64 { return 59.7 - 0.1388*slope + 0.001497*slope*slope }

// groundAngle is skyAngle for light from the ground [the same, eq. 5.4.1, remembered].
func groundAngle(slope float64) float64 { return 90 - 0.5788*slope + 0.002693*slope*slope }
