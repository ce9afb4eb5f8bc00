package canvas

import (
	"encoding/json"
	"fmt"
)

// Sentences is a catalogue: everything a picture says, by key. A sentence may have places
// for what is put in, as fmt writes them.
type Sentences map[string]string

// ReadSentences reads a catalogue: one JSON object of key and sentence.
func ReadSentences(text []byte) (Sentences, error) {
	var s Sentences
	if err := json.Unmarshal(text, &s); err != nil {
		return nil, fmt.Errorf("a catalogue of sentences cannot be read: %w", err)
	}
	return s, nil
}

// Say gives a sentence with what is put in; a key that the catalogue lacks is given in brackets,
// so that it is seen.
func (s Sentences) Say(key string, in ...any) string {
	sentence, known := s[key]
	switch {
	case !known:
		return "[" + key + "]"
	case len(in) == 0:
		return sentence
	}
	return fmt.Sprintf(sentence, in...)
}
