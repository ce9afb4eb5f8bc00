package power

// TaskState is the work that waits. Its zero value is nothing waiting.
type TaskState struct {
	Held    [MostWaiting][MostWait + 1]float64 // Wh by task and days waited
	waiting uint8                              // tasks with something held, a bit each
}

// Waiting gives all that waits, Wh.
func (s *TaskState) Waiting() float64 {
	sum := 0.0
	for k := range s.Held {
		for _, e := range s.Held[k] {
			sum += e
		}
	}
	return sum
}
