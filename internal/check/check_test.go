package check

import "testing"

func TestDigitsAreTheTolerance(t *testing.T) {
	for text, want := range map[string]float64{"4.29": 0.005, "13": 0.5, "1.20e3": 5, "0.0003": 0.00005, "-0.438": 0.0005} {
		if got := halfLastDigit(text); got < want || got > want*(1+1e-6) {
			t.Errorf("%s allows %g, want %g", text, got, want)
		}
	}
}

func TestWiderBoundNeedsReason(t *testing.T) {
	if _, _, err := (Published{Source: "x", At: "p. 1", Value: "1", Within: 0.2}).Allowed(); err == nil {
		t.Error("a bound without a reason was taken")
	}
	if _, _, err := (Published{Source: "x", At: "p. 1", Value: "one"}).Allowed(); err == nil {
		t.Error("a value that is no number was taken")
	}
}
