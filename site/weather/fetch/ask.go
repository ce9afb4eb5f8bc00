package fetch

import (
	"context"
	"errors"
	"fmt"
	"io"
	"net/http"
	"strconv"
	"strings"
	"time"
)

const (
	// tries is how often a year is asked for before giving up, after waiting first 2, then
	// 4, 8 and 16 s. pause lies between two years that come at once. Common practice, no
	// source: the service states no rate.
	tries = 5
	first = 2 * time.Second
	pause = time.Second
	// patience is the longest wait that the service may ask for.
	patience = 10 * time.Minute
	// slowest is how long one answer may take.
	slowest = 5 * time.Minute
	// largest is the most that an answer may hold: a year of hours in eight columns has 700 kB.
	largest = 16 << 20
)

// A refusal is an answer that is no record.
type refusal struct {
	status int
	says   string
	after  time.Duration // what the service asks to wait; 0 if it does not say
}

func (r *refusal) Error() string {
	text := fmt.Sprintf("the service answers %d %s", r.status, http.StatusText(r.status))
	if r.says != "" {
		text += ": " + r.says
	}
	return text
}

// passing reports whether asking again may help.
func (r *refusal) passing() bool {
	switch r.status {
	case http.StatusTooManyRequests, http.StatusRequestTimeout, http.StatusInternalServerError,
		http.StatusBadGateway, http.StatusServiceUnavailable, http.StatusGatewayTimeout:
		return true
	}
	return false
}

// errElsewhere ends a redirection to another host.
var errElsewhere = errors.New("the service points to another host")

// errLarge ends an answer that is too long.
var errLarge = fmt.Errorf("the answer has more than %d MB: this is no year of weather", largest>>20)

// ask asks until there is an answer, a refusal for good, or patience ends.
func (f *Fetcher) ask(ctx context.Context, address string) ([]byte, error) {
	delay := first
	for try := 1; ; try++ {
		body, err := f.once(ctx, address)
		if err == nil {
			return body, nil
		}
		if ctx.Err() != nil {
			return nil, context.Cause(ctx)
		}
		wait := delay
		var no *refusal
		if errors.As(err, &no) {
			if !no.passing() {
				return nil, err
			}
			wait = max(wait, no.after)
		}
		if errors.Is(err, errElsewhere) || errors.Is(err, errLarge) {
			return nil, err
		}
		if wait > patience {
			return nil, fmt.Errorf("%w; it asks to wait %s", err, wait)
		}
		if try == tries {
			return nil, fmt.Errorf("%w, after %d tries", err, tries)
		}
		f.tell("%v: trying again in %s", err, wait)
		if err := f.wait(ctx, wait); err != nil {
			return nil, err
		}
		delay *= 2
	}
}

// once asks one time.
func (f *Fetcher) once(ctx context.Context, address string) ([]byte, error) {
	ctx, cancel := context.WithTimeout(ctx, slowest)
	defer cancel()
	request, err := http.NewRequestWithContext(ctx, http.MethodGet, address, nil)
	if err != nil {
		return nil, err
	}
	request.Header.Set("User-Agent", "suffice weather fetch")
	request.Header.Set("Accept", "text/csv, text/plain")
	answer, err := f.client().Do(request)
	if err != nil {
		return nil, err
	}
	defer answer.Body.Close()
	body, err := io.ReadAll(io.LimitReader(answer.Body, largest+1))
	switch {
	case err != nil:
		return nil, fmt.Errorf("the answer broke off: %w", err)
	case answer.StatusCode != http.StatusOK:
		return nil, &refusal{status: answer.StatusCode, says: sentence(body), after: f.after(answer.Header.Get("Retry-After"))}
	case len(body) > largest:
		return nil, errLarge
	}
	return body, nil
}

// client gives a client that stays with the host it was sent to.
func (f *Fetcher) client() *http.Client {
	c := http.Client{}
	if f.Client != nil {
		c = *f.Client
	}
	c.CheckRedirect = func(next *http.Request, before []*http.Request) error {
		if from := before[0].URL; next.URL.Host != from.Host || next.URL.Scheme != from.Scheme {
			return fmt.Errorf("%w: %s", errElsewhere, next.URL.Host)
		}
		if len(before) > 5 {
			return errors.New("the service points in a circle")
		}
		return nil
	}
	return &c
}

// after reads Retry-After: seconds, or a date (RFC 9110, 10.2.3). What cannot be read is
// taken as not said.
func (f *Fetcher) after(header string) time.Duration {
	header = strings.TrimSpace(header)
	if seconds, err := strconv.ParseUint(header, 10, 32); err == nil {
		return time.Duration(seconds) * time.Second
	}
	at, err := http.ParseTime(header)
	if err != nil {
		return 0
	}
	now := time.Now
	if f.Now != nil {
		now = f.Now
	}
	return max(0, at.Sub(now())).Round(time.Second)
}

// wait waits, or ends with the context.
func (f *Fetcher) wait(ctx context.Context, d time.Duration) error {
	if f.Wait != nil {
		return f.Wait(ctx, d)
	}
	timer := time.NewTimer(d)
	defer timer.Stop()
	select {
	case <-ctx.Done():
		return context.Cause(ctx)
	case <-timer.C:
		return nil
	}
}

// sentence gives the beginning of a refusal's text on one line, without what a terminal
// might take for a command.
func sentence(body []byte) string {
	text := strings.Map(func(r rune) rune {
		if r < ' ' || r == 0x7f || r == '\ufffd' {
			return ' '
		}
		return r
	}, string(body[:min(len(body), 600)]))
	text = strings.Join(strings.Fields(text), " ")
	if r := []rune(text); len(r) > 200 {
		text = string(r[:200]) + "..."
	}
	return text
}
