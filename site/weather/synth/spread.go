package synth

import "math"

// A Spread is a distribution, as its quantiles at even steps of probability from 0 to 1;
// between them it is even.
type Spread [quantiles]float64

const quantiles = 65

// At gives the quantile of a probability.
func (s *Spread) At(p float64) float64 {
	x := p * (quantiles - 1)
	i := min(int(x), quantiles-2)
	return s[i] + (x-float64(i))*(s[i+1]-s[i])
}

// Mean gives the mean of the distribution.
func (s *Spread) Mean() float64 {
	sum := (s[0] + s[quantiles-1]) / 2
	for _, v := range s[1 : quantiles-1] {
		sum += v
	}
	return sum / (quantiles - 1)
}

// below gives the probability of a Gaussian below z.
func below(z float64) float64 { return math.Erfc(-z/math.Sqrt2) / 2 }

// highestClearness bounds a day's clearness in the distribution of hollands-huget.
const highestClearness = 0.864

// hollandsHuget gives the distribution of daily clearness with a mean (hollands-huget):
// density C (top - k) exp(a k) between 0 and top.
func hollandsHuget(mean float64) (s Spread) {
	mean = min(mean, 0.98*highestClearness)
	if mean <= 0 {
		return s
	}
	a := clearnessShape(mean)
	for i := range s {
		left, right := 0.0, highestClearness
		for right-left > 1e-9 {
			if k := (left + right) / 2; duller(a, k) < float64(i)/(quantiles-1) {
				left = k
			} else {
				right = k
			}
		}
		s[i] = right
	}
	return s.scaledTo(mean)
}

// clearnessShape finds the a of the density from the mean.
func clearnessShape(mean float64) float64 {
	const steps = 100
	low, high := -300.0, 300.0
	for high-low > 1e-6 {
		a, average := (low+high)/2, 0.0
		for i := range steps { // the integral of 1 - F
			average += (1 - duller(a, (float64(i)+0.5)/steps*highestClearness)) * highestClearness / steps
		}
		if average < mean {
			low = a
		} else {
			high = a
		}
	}
	return high
}

// duller gives the share of days that are duller than k, the integral of the density; both of its parts
// are divided by exp(a top) so that neither overflows.
func duller(a, k float64) float64 {
	const top = highestClearness
	if math.Abs(a) < 1e-4 { // the straight density, whose two parts vanish
		return k * (2*top - k) / (top * top)
	}
	start := math.Exp(-a*top) * (1 + a*top)
	return (math.Exp(a*(k-top))*(1+a*(top-k)) - start) / (1 - start)
}

// scaledTo moves a distribution onto a mean, by what the laying out as quantiles left.
func (s Spread) scaledTo(mean float64) Spread {
	if have := s.Mean(); have != 0 {
		for i := range s {
			s[i] *= mean / have
		}
	}
	return s
}

// even is a distribution of one value.
func even(v float64) (s Spread) {
	for i := range s {
		s[i] = v
	}
	return s
}

// bell is a Gaussian, laid out so that mean and deviation are those stated.
func bell(mean, deviation float64) (s Spread) {
	square := 0.0
	for i := range s {
		s[i] = gaussian(max(0.25, min(quantiles-1.25, float64(i))) / (quantiles - 1))
	}
	for i := 1; i < quantiles; i++ { // of straight pieces
		square += (s[i]*s[i] + s[i]*s[i-1] + s[i-1]*s[i-1]) / 3 / (quantiles - 1)
	}
	for i := range s {
		s[i] = mean + deviation*s[i]/math.Sqrt(square)
	}
	return s
}
