package web

import (
	"context"
	"encoding/json"
	"fmt"
	"io"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/chromedp"

	"slabwright/report"
)

// browserPath finds a Chromium, or skips the test; with
// SLABWRIGHT_BROWSER=required the test fails instead.
func browserPath(t *testing.T) string {
	t.Helper()
	if testing.Short() {
		t.Skip("a browser takes its time")
	}
	for _, name := range []string{"chromium", "chromium-browser", "google-chrome", "chrome"} {
		if found, err := exec.LookPath(name); err == nil {
			return found
		}
	}
	if os.Getenv("SLABWRIGHT_BROWSER") == "required" {
		t.Fatal("no Chromium was found and SLABWRIGHT_BROWSER=required")
	}
	t.Skip("no Chromium on this computer")
	return ""
}

// screen is one browser tab looking at a server.
type screen struct {
	t       *testing.T
	ctx     context.Context
	address string

	said map[string]int // rules broken so far

	mu       sync.Mutex
	wrong    []string // what the console complained of
	outgoing []string // requests that would leave this computer
}

// browser is started once, by the first test that looks at a page, and shared: each
// test has a tab, and a server and so an origin and a storage of its own.
var browser struct {
	once   sync.Once
	ctx    context.Context
	close  func()
	folder string
	err    error
}

func TestMain(m *testing.M) {
	code := m.Run()
	if browser.close != nil {
		browser.close()
	}
	if browser.folder != "" {
		removeSoon(browser.folder)
	}
	os.Exit(code)
}

func startBrowser(path string) {
	if browser.folder, browser.err = os.MkdirTemp("", "slabwright-browser"); browser.err != nil {
		return
	}
	options := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(path), chromedp.NoSandbox, chromedp.DisableGPU,
		chromedp.UserDataDir(browser.folder), chromedp.Flag("disable-quic", true), chromedp.Flag("disable-component-update", true),
		chromedp.Flag("lang", "en-GB"), chromedp.Flag("hide-scrollbars", true))
	allocator, stop := chromedp.NewExecAllocator(context.Background(), options...)
	ctx, end := chromedp.NewContext(allocator)
	browser.ctx, browser.close = ctx, func() { end(); stop() }
	browser.err = chromedp.Do(ctx, chromedp.Navigate("about:blank"))
}

// newScreen opens a tab on the handler.
func newScreen(t *testing.T, handler http.Handler) *screen {
	t.Helper()
	path := browserPath(t)
	browser.once.Do(func() { startBrowser(path) })
	if browser.err != nil {
		t.Fatal(browser.err)
	}
	server := httptest.NewServer(handler)
	t.Cleanup(server.Close)
	ctx, closeTab := chromedp.NewContext(browser.ctx)
	t.Cleanup(closeTab)
	s := &screen{t: t, ctx: ctx, address: server.URL}
	messages, requests := chromedp.Console(ctx), chromedp.Events(ctx, network.RequestWillBeSent)
	go func() {
		for m, err := range messages {
			if err != nil {
				return
			}
			if m.IsException() || m.Type == "error" || m.Type == "warning" {
				s.note(&s.wrong, m.String()+" "+m.URL)
			}
		}
	}()
	go func() {
		for r, err := range requests {
			if err != nil {
				return
			}
			if u, err := url.Parse(r.Request.URL); err != nil || (u.Scheme != "data" && u.Hostname() != "127.0.0.1") {
				s.note(&s.outgoing, r.Request.URL)
			}
		}
	}()
	return s
}

func (s *screen) note(list *[]string, text string) {
	s.mu.Lock()
	defer s.mu.Unlock()
	*list = append(*list, text)
}

// quiet fails the test if the console complained or a request left this computer.
func (s *screen) quiet() {
	s.t.Helper()
	s.mu.Lock()
	defer s.mu.Unlock()
	if len(s.wrong) > 0 {
		s.t.Errorf("the console says:\n%s", strings.Join(s.wrong, "\n"))
	}
	if len(s.outgoing) > 0 {
		s.t.Errorf("requests left this computer: %v", s.outgoing)
	}
}

// removeSoon waits for the last writes of a browser that has been stopped.
func removeSoon(folder string) {
	for range 50 {
		if os.RemoveAll(folder) == nil {
			return
		}
		time.Sleep(100 * time.Millisecond)
	}
}

func (s *screen) do(steps ...chromedp.Action[chromedp.Void]) {
	s.t.Helper()
	ctx, cancel := context.WithTimeout(s.ctx, 20*time.Second)
	defer cancel()
	if err := chromedp.Do(ctx, steps...); err != nil {
		s.t.Fatal(err)
	}
}

// start opens the tab without a time limit, which would end it.
func (s *screen) start() {
	s.t.Helper()
	if err := chromedp.Do(s.ctx, chromedp.Navigate("about:blank")); err != nil {
		s.t.Fatal(err)
	}
}

// size sets the window; below 700 px it is a phone.
func (s *screen) size(width, height int64) {
	s.t.Helper()
	if width < 700 {
		s.do(chromedp.EmulateViewport(width, height, chromedp.EmulateMobile, chromedp.EmulateTouch))
		return
	}
	s.do(chromedp.EmulateViewport(width, height))
}

// open goes to a place of the app and waits for its heading.
func (s *screen) open(place string) {
	s.t.Helper()
	s.do(chromedp.Navigate("about:blank"), chromedp.Navigate(s.address+"/#/"+place))
	s.until(`document.querySelector(".page h1")`)
	s.settle()
}

// turn goes to another place of the app as it stands, without loading the page again.
func (s *screen) turn(place string) {
	s.t.Helper()
	eval[bool](s, `location.hash = "#/`+place+`", true`)
	s.until(`location.hash === "#/` + place + `" && document.querySelector(".page h1")`)
	s.settle()
}

// settle waits until two frames were drawn and the font is there.
func (s *screen) settle() {
	s.t.Helper()
	eval[bool](s, `document.fonts.ready.then(() => new Promise(r => requestAnimationFrame(() => requestAnimationFrame(() => r(true)))))`)
}

func eval[T any](s *screen, expression string) T {
	s.t.Helper()
	ctx, cancel := context.WithTimeout(s.ctx, 30*time.Second)
	defer cancel()
	v, err := chromedp.Run(ctx, chromedp.Evaluate[T](expression, chromedp.EvalAwaitPromise))
	if err != nil {
		s.t.Fatalf("%v in %.120s", err, expression)
	}
	return v
}

// until waits for an expression of the page to be true.
func (s *screen) until(expression string) {
	s.t.Helper()
	for range 200 {
		if eval[bool](s, "!!("+expression+")") {
			return
		}
		time.Sleep(25 * time.Millisecond)
	}
	s.t.Fatalf("never came true: %s\nthe page says: %.600s", expression, eval[string](s, "document.body.innerText"))
}

// unfold opens every fold, and the folds inside them.
func (s *screen) unfold() {
	s.t.Helper()
	for range 3 {
		eval[bool](s, `[...document.querySelectorAll("details")].forEach(d => d.open = true), true`)
		s.settle()
	}
}

// press sends keys to whatever has the focus.
func (s *screen) press(keys string) {
	s.t.Helper()
	s.do(chromedp.KeyEvent(keys))
}

// shot keeps a picture of the screen in the folder SLABWRIGHT_SHOTS, if that is set.
func (s *screen) shot(name string) {
	s.t.Helper()
	folder := os.Getenv("SLABWRIGHT_SHOTS")
	if folder == "" {
		return
	}
	s.settle()
	picture, err := chromedp.Run(s.ctx, chromedp.CaptureScreenshot())
	if err != nil {
		s.t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(folder, name+".png"), picture, 0o644); err != nil {
		s.t.Fatal(err)
	}
}

// axe runs the accessibility rules on the page as it stands and fails on any
// violation, saying each once however many screens have it.
func (s *screen) axe(where string) {
	s.t.Helper()
	s.rules(where, `{type: "tag", values: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]}`)
}

// contrast runs only the rule of contrast, for themes, which differ in nothing else.
func (s *screen) contrast(where string) {
	s.t.Helper()
	s.rules(where, `{type: "rule", values: ["color-contrast"]}`)
}

func (s *screen) rules(where, which string) {
	s.t.Helper()
	if !eval[bool](s, "typeof axe === 'object'") {
		rules, err := os.ReadFile("../third_party/npm/axe-core/axe.min.js")
		if err != nil {
			s.t.Fatal(err)
		}
		eval[bool](s, string(rules)+"; true")
	}
	found := eval[string](s, `axe.run(document, {resultTypes: ["violations"], runOnly: `+which+`})
		.then(r => JSON.stringify(r.violations.map(v => v.id + ": " + v.help + " — " + v.nodes.slice(0, 4).map(n => n.target + " " + (n.failureSummary || "").replace(/\s+/g, " ").slice(0, 240)).join(" | "))))`)
	var violations []string
	if err := json.Unmarshal([]byte(found), &violations); err != nil {
		s.t.Fatal(err)
	}
	for _, v := range violations {
		rule, _, _ := strings.Cut(v, ":")
		if s.said == nil {
			s.said = map[string]int{}
		}
		if s.said[rule]++; s.said[rule] <= 2 {
			s.t.Errorf("%s: %s", where, v)
		}
	}
}

// fits fails when the page is wider than the window.
func (s *screen) fits(where string) {
	s.t.Helper()
	over := eval[string](s, `(() => { const w = document.documentElement.clientWidth; if (document.documentElement.scrollWidth <= w) return "";
		return document.documentElement.scrollWidth + " px in " + w + ": " + [...document.querySelectorAll("body *")].filter(e => e.getBoundingClientRect().right > w + 1 && !e.closest(".table, svg, .plan-frame")).slice(0, 5).map(e => e.tagName + "." + e.className).join(", ") })()`)
	if over != "" {
		s.t.Errorf("%s: the page scrolls sideways: %s", where, over)
	}
}

func filled(t *testing.T) http.Handler {
	c := fixture(t)
	return Handler(func(context.Context) (*report.Content, error) { return c, nil }, Options{
		PDF: func(w io.Writer, _ *report.Content) error { _, err := fmt.Fprint(w, "%PDF-1.7 test"); return err },
	})
}

// screens is every screen of the app with something in it.
var screens = []string{"page-one", "findings", "finding/F1", "finding/F8", "joint/S2-10", "pours", "pour/S2", "panel/P8", "slab", "workings", "working/window-strip-2", "basis", "keys"}
