package canvas

import (
	"encoding/json"
	"fmt"
	"strings"
)

// Sentences is a catalogue: everything a picture says, by key. A sentence has places for what
// is put in, such as {month}.
type Sentences map[string]string

// ReadSentences reads a catalogue: one JSON object of key and sentence.
func ReadSentences(text []byte) (Sentences, error) {
	var s Sentences
	if err := json.Unmarshal(text, &s); err != nil {
		return nil, fmt.Errorf("a catalogue of sentences cannot be read: %w", err)
	}
	return s, nil
}

// Say gives a sentence with what is put in, written as pairs of place and text. A key that the
// catalogue lacks is given in brackets, so that it is seen.
func (s Sentences) Say(key string, pairs ...string) string {
	sentence, known := s[key]
	if !known {
		return "[" + key + "]"
	}
	places := make([]string, 0, len(pairs))
	for i := 0; i+1 < len(pairs); i += 2 {
		places = append(places, "{"+pairs[i]+"}", pairs[i+1])
	}
	return strings.NewReplacer(places...).Replace(sentence)
}
