package files

import (
	"bufio"
	"bytes"
	"compress/gzip"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"unicode/utf8"
)

const (
	// largest is the most a weather file may hold, packed or unpacked: 160 years of hours
	// in twenty columns are 200 MB.
	largest = 512 << 20
	// longest is the most a line may hold; the longest line of any format read here,
	// the names of a typical year's columns, has 1 300 characters.
	longest = 16 << 10
	// mostHeader is the most lines that may stand above a table, mostBlank the most blank
	// ones in a row. The longest header of NASA POWER has 30 lines.
	mostHeader, mostBlank = 1000, 1000
	// peek is how much of the beginning is looked at to tell the format.
	peek = 8 << 10
)

// A source gives the lines of a file, unpacked.
type source struct {
	name   string // as a person knows it: the last part of the path
	reader *bufio.Reader
	head   []byte // the beginning, unread
	line   int    // number of the line last given
	read   int    // bytes given
	size   int64  // of the file as it lies on the disk, 0 if it comes from elsewhere
	failed error
	held   string // a line put back
	back   bool
}

// openSource opens a file and looks at its beginning. The caller closes it.
func openSource(path string) (*source, io.Closer, error) {
	name := filepath.Base(path)
	info, err := os.Stat(path)
	switch {
	case errors.Is(err, os.ErrNotExist):
		return nil, nil, fmt.Errorf("%s: there is no such file: look at the name and the folder", path)
	case err != nil:
		return nil, nil, fmt.Errorf("%s: cannot be opened: %w", path, err)
	case info.IsDir():
		return nil, nil, fmt.Errorf("%s is a folder: name the weather file in it", path)
	case !info.Mode().IsRegular():
		return nil, nil, fmt.Errorf("%s is not a plain file: save the record to a file first", path)
	case info.Size() == 0:
		return nil, nil, fmt.Errorf("%s is empty: fetch the record again", name)
	case info.Size() > largest:
		return nil, nil, fmt.Errorf("%s has %d MB: the most is %d MB, cut it to the years and columns you need", name, info.Size()>>20, largest>>20)
	}
	file, err := os.Open(path)
	if err != nil {
		return nil, nil, fmt.Errorf("%s: cannot be opened: %w", path, err)
	}
	s, err := newSource(name, file)
	if err != nil {
		return nil, nil, errors.Join(err, file.Close())
	}
	s.size = info.Size()
	return s, file, nil
}

// newSource unpacks where the first bytes say gzip, and refuses what is no text.
func newSource(name string, r io.Reader) (*source, error) {
	s := &source{name: name, reader: bufio.NewReaderSize(r, 64<<10)}
	if magic, _ := s.reader.Peek(2); bytes.Equal(magic, []byte{0x1f, 0x8b}) { // RFC 1952, 2.3.1
		unpacked, err := gzip.NewReader(s.reader)
		if err != nil {
			return nil, fmt.Errorf("%s: the gzip packing is damaged: fetch the file again", name)
		}
		s.reader = bufio.NewReaderSize(unpacked, 64<<10)
	}
	head, err := s.reader.Peek(peek)
	if err != nil && err != io.EOF {
		return nil, s.broken(err)
	}
	if bytes.HasPrefix(head, []byte("\ufeff")) {
		if _, err := s.reader.Discard(3); err != nil {
			return nil, s.broken(err)
		}
		head, _ = s.reader.Peek(peek)
	}
	if len(bytes.TrimSpace(head)) == 0 {
		return nil, fmt.Errorf("%s has no text in it: fetch the record again", name)
	}
	if bytes.IndexByte(head, 0) >= 0 || !mostlyText(head) {
		return nil, fmt.Errorf("%s is not a text file: save the record as plain text (UTF-8), or as gzip of it", name)
	}
	s.head = bytes.Clone(head)
	return s, nil
}

// mostlyText reports whether bytes look like written text: valid UTF-8, and no control
// characters but those of lines. The cut end of the window is forgiven.
func mostlyText(b []byte) bool {
	for len(b) > 0 {
		r, n := utf8.DecodeRune(b)
		if r == utf8.RuneError && n == 1 && len(b) >= utf8.UTFMax {
			return false
		}
		if r < ' ' && r != '\n' && r != '\r' && r != '\t' {
			return false
		}
		b = b[n:]
	}
	return true
}

// firstLines gives up to n lines of the beginning, without reading them.
func (s *source) firstLines(n int) []string {
	lines := strings.SplitN(string(s.head), "\n", n+1)
	if len(lines) > n {
		lines = lines[:n]
	}
	for i := range lines {
		lines[i] = strings.TrimRight(lines[i], "\r ")
	}
	return lines
}

// next gives the next line without its end, and false at the end of the file or a
// failure, which Err then tells.
func (s *source) next() (string, bool) {
	if s.back {
		s.back = false
		s.line++
		return s.held, true
	}
	if s.failed != nil {
		return "", false
	}
	raw, err := s.reader.ReadSlice('\n')
	text := raw
	for err == bufio.ErrBufferFull && len(text) <= longest {
		text = bytes.Clone(text)
		raw, err = s.reader.ReadSlice('\n')
		text = append(text, raw...)
	}
	s.read += len(text)
	switch {
	case len(text) > longest+2:
		s.failed = fmt.Errorf("%s: line %d has more than %d characters: this is no table of weather", s.name, s.line+1, longest)
	case s.read > largest:
		s.failed = fmt.Errorf("%s unpacks to more than %d MB: cut it to the years and columns you need", s.name, largest>>20)
	case err != nil && err != io.EOF:
		s.failed = s.broken(err)
	}
	if s.failed != nil || len(text) == 0 {
		return "", false
	}
	s.line++
	return strings.TrimRight(string(text), "\r\n"), true
}

// nextRow gives the next line that is not blank.
func (s *source) nextRow() (string, bool) {
	for blank := 0; blank <= mostBlank; blank++ {
		line, ok := s.next()
		if !ok || strings.TrimSpace(line) != "" {
			return line, ok
		}
	}
	s.failed = s.at("more than %d blank lines follow each other: the file is damaged, fetch it again", mostBlank)
	return "", false
}

// unread puts the line last given back.
func (s *source) unread(line string) { s.held, s.back, s.line = line, true, s.line-1 }

func (s *source) broken(err error) error {
	if errors.Is(err, io.ErrUnexpectedEOF) {
		return fmt.Errorf("%s: the packed file is cut short after line %d: fetch it again", s.name, s.line)
	}
	if errors.Is(err, gzip.ErrChecksum) || errors.Is(err, gzip.ErrHeader) {
		return fmt.Errorf("%s: the packed file is damaged after line %d: fetch it again", s.name, s.line)
	}
	return fmt.Errorf("%s: cannot be read after line %d: %w", s.name, s.line, err)
}

// at makes an error that names the file and the line last given.
func (s *source) at(format string, args ...any) error {
	return fmt.Errorf("%s: line %d: %w", s.name, s.line, fmt.Errorf(format, args...))
}
