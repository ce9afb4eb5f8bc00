package web

import (
	"compress/gzip"
	"context"
	"fmt"
	"io"
	"net/http/httptest"
	"os"
	"os/exec"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// pages are all that a reader can reach from the head of a page, and one behind each.
var pages = []string{"/", "/year", "/water", "/power", "/warmth", "/garden", "/waste", "/sheets", "/sheets/gas", "/change", "/hour?at=1984-06-01T12"}

// browser starts a real one. Without it the tests say so: on a machine of the project they
// fail, elsewhere they are not run.
func browser(t *testing.T) context.Context {
	t.Helper()
	path := ""
	for _, name := range []string{"chromium", "chromium-browser", "google-chrome"} {
		if found, err := exec.LookPath(name); err == nil {
			path = found
			break
		}
	}
	if path == "" {
		if os.Getenv("CI") == "true" {
			t.Fatal("no Chromium on this machine: tools/chromium installs it")
		}
		t.Log("NOT RUN: there is no Chromium on this machine; tools/chromium installs Debian's")
		return nil
	}
	options := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(path), chromedp.NoSandbox, chromedp.DisableGPU,
		chromedp.Flag("disable-background-networking", true), chromedp.Flag("disable-component-update", true),
		chromedp.Flag("disable-sync", true), chromedp.Flag("disable-quic", true))
	ctx, stop := chromedp.NewExecAllocator(context.Background(), options...)
	t.Cleanup(stop)
	ctx, cancel := chromedp.NewContext(ctx)
	t.Cleanup(cancel)
	if err := chromedp.Do(ctx); err != nil {
		t.Fatal(err)
	}
	return ctx
}

// tab opens one for a test and limits it in time.
func tab(t *testing.T, ctx context.Context) context.Context {
	t.Helper()
	ctx, cancel := chromedp.NewContext(ctx)
	t.Cleanup(cancel)
	if err := chromedp.Do(ctx); err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithTimeout(ctx, 4*time.Minute)
	t.Cleanup(stop)
	return ctx
}

func serve(t *testing.T) string {
	t.Helper()
	server := httptest.NewServer(demo(t))
	t.Cleanup(server.Close)
	return server.URL
}

// heard is what a page asked of the network and complained of.
type heard struct {
	lock     sync.Mutex
	requests []string
}

func (h *heard) listen(ctx context.Context) error {
	return chromedp.Listen(ctx, func(ev any) {
		if sent, ok := ev.(*network.EventRequestWillBeSent); ok {
			h.lock.Lock()
			h.requests = append(h.requests, sent.Request.URL)
			h.lock.Unlock()
		}
	})
}

// No page complains, asks anything of another machine, or is wider than the screen.
func TestPagesInBrowser(t *testing.T) {
	base := browser(t)
	if base == nil {
		return
	}
	home := serve(t)
	for _, page := range pages {
		for _, width := range []int64{360, 768, 1440} {
			t.Run(fmt.Sprintf("%s at %d", page, width), func(t *testing.T) {
				ctx := tab(t, base)
				var h heard
				if err := h.listen(ctx); err != nil {
					t.Fatal(err)
				}
				messages := chromedp.Console(ctx)
				if err := chromedp.Do(ctx, chromedp.EmulateViewport(width, 900), chromedp.Navigate(home+page)); err != nil {
					t.Fatal(err)
				}
				over, err := chromedp.Run(ctx, chromedp.Evaluate[float64]("document.documentElement.scrollWidth - window.innerWidth"))
				if err != nil || over > 0 {
					t.Errorf("the page is %g pixels wider than the screen (%v)", over, err)
				}
				h.away(t, home)
				pictures(t, ctx)
				quiet(t, ctx, messages)
			})
		}
	}
}

// away fails for every request that left the machine.
func (h *heard) away(t *testing.T, home string) {
	t.Helper()
	h.lock.Lock()
	defer h.lock.Unlock()
	if len(h.requests) == 0 {
		t.Error("the browser asked for nothing: the test sees no requests")
	}
	for _, url := range h.requests {
		if !strings.HasPrefix(url, home) && !strings.HasPrefix(url, "data:") {
			t.Errorf("a request left the machine: %s", url)
		}
	}
}

// quiet fails for every complaint on the console up to a mark that it writes itself.
func quiet(t *testing.T, ctx context.Context, messages func(func(chromedp.ConsoleMessage, error) bool)) {
	t.Helper()
	if err := chromedp.Do(ctx, chromedp.Evaluate[chromedp.Void]("console.info('end of page')")); err != nil {
		t.Fatal(err)
	}
	for m, err := range messages {
		if err != nil {
			t.Fatal(err)
		}
		if m.Text == "end of page" {
			return
		}
		t.Errorf("the page says on the console: %s", m)
	}
}

// pictures holds each to our own rule: a title, a sentence that sums it up, the same data as
// a table, and figures that keys or a screen reader can reach.
func pictures(t *testing.T, ctx context.Context) {
	t.Helper()
	faults, err := chromedp.Run(ctx, chromedp.Evaluate[[]string](`[...document.querySelectorAll("figure")].flatMap((f, i) => {
		const name = "picture " + (i + 1), out = [];
		const caption = f.querySelector("figcaption");
		if (!caption || caption.textContent.trim().split(/\s+/).length < 6) out.push(name + " has no title with a sentence");
		if (!f.querySelector("table") && !(f.nextElementSibling && f.nextElementSibling.querySelector("table"))) out.push(name + " has no table");
		for (const drawn of f.querySelectorAll("svg:not([aria-hidden=true]), canvas")) {
			const named = e => e && e.getAttribute("role") && (e.getAttribute("aria-label") || e.getAttribute("aria-labelledby") || e.querySelector("title"));
			if (!named(drawn) && !named(drawn.closest("[role]"))) out.push(name + " has a " + drawn.tagName + " without a name for a screen reader: " + drawn.outerHTML.slice(0, 160));
		}
		return out;
	})`))
	if err != nil {
		t.Fatal(err)
	}
	for _, fault := range faults {
		t.Error(fault)
	}
}

// axe-core finds nothing serious in light and in dark.
func TestReadableByEverybody(t *testing.T) {
	base := browser(t)
	if base == nil {
		return
	}
	home, axe := serve(t), axeSource(t)
	for _, page := range pages {
		for _, scheme := range []string{"light", "dark"} {
			t.Run(page+" "+scheme, func(t *testing.T) {
				ctx := tab(t, base)
				media := emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: scheme}}}
				if _, err := chromedp.Call(ctx, emulation.SetEmulatedMedia, media); err != nil {
					t.Fatal(err)
				}
				if err := chromedp.Do(ctx, chromedp.EmulateViewport(768, 900), chromedp.Navigate(home+page), chromedp.Evaluate[chromedp.Void](axe)); err != nil {
					t.Fatal(err)
				}
				faults, err := chromedp.Run(ctx, chromedp.Evaluate[[]string](`axe.run(document, {resultTypes: ["violations"]}).then(r => r.violations
					.filter(v => v.impact === "serious" || v.impact === "critical")
					.map(v => v.id + ": " + v.help + " at " + v.nodes.slice(0, 3).map(n => n.target.join(" ")).join("; ")))`, chromedp.EvalAwaitPromise))
				if err != nil {
					t.Fatal(err)
				}
				for _, fault := range faults {
					t.Error(fault)
				}
			})
		}
	}
}

func axeSource(t *testing.T) string {
	t.Helper()
	f, err := os.Open("testdata/axe/axe-4.14.1.min.js.gz")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	z, err := gzip.NewReader(f)
	if err != nil {
		t.Fatal(err)
	}
	text, err := io.ReadAll(z)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// The whole head of a page can be walked by the Tab key, and Enter opens what has the focus.
func TestKeyboardAlone(t *testing.T) {
	base := browser(t)
	if base == nil {
		return
	}
	ctx := tab(t, base)
	home := serve(t)
	if err := chromedp.Do(ctx, chromedp.EmulateViewport(1024, 900), chromedp.Navigate(home+"/")); err != nil {
		t.Fatal(err)
	}
	for range 12 {
		if err := chromedp.Do(ctx, chromedp.KeyEvent(kb.Tab)); err != nil {
			t.Fatal(err)
		}
		at, err := chromedp.Run(ctx, chromedp.Evaluate[string](`document.activeElement.getAttribute("href") || ""`))
		if err != nil {
			t.Fatal(err)
		}
		ring, err := chromedp.Run(ctx, chromedp.Evaluate[string](`getComputedStyle(document.activeElement).outlineStyle`))
		if err != nil || ring == "none" {
			t.Errorf("what has the focus (%s) shows no ring (%v)", at, err)
		}
		if at == "/water" {
			if _, err := chromedp.RunResponse(ctx, chromedp.KeyEvent(kb.Enter)); err != nil {
				t.Fatal(err)
			}
			where, err := chromedp.Run(ctx, chromedp.Location())
			if err != nil || where != home+"/water" {
				t.Errorf("Enter led to %s (%v), want the water page", where, err)
			}
			return
		}
	}
	t.Error("twelve tabs did not reach the water page")
}

// Without script a sheet is worked by its form, and a refusal is read.
func TestWithoutScript(t *testing.T) {
	base := browser(t)
	if base == nil {
		return
	}
	ctx := tab(t, base)
	home := serve(t)
	off := emulation.SetScriptExecutionDisabledParams{Value: true}
	if _, err := chromedp.Call(ctx, emulation.SetScriptExecutionDisabled, off); err != nil {
		t.Fatal(err)
	}
	for _, page := range pages {
		response, err := chromedp.RunResponse(ctx, chromedp.Navigate(home+page))
		if err != nil || response.Status != 200 {
			t.Errorf("%s: %v, %v", page, response, err)
		}
	}
	if err := chromedp.Do(ctx, chromedp.Navigate(home+"/sheets/gas"), chromedp.SetValue(chromedp.CSS("[name=energy]"), "50 kWh")); err != nil {
		t.Fatal(err)
	}
	if _, err := chromedp.RunResponse(ctx, chromedp.Submit(chromedp.CSS("[name=energy]"))); err != nil {
		t.Fatal(err)
	}
	page, err := chromedp.Run(ctx, chromedp.OuterHTML(chromedp.CSS("main")))
	if err != nil || !strings.Contains(page, "50 kWh") || !strings.Contains(page, "kg") {
		t.Errorf("the gas sheet did not work without script (%v): %.300s", err, page)
	}
}
