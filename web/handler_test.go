package web

import (
	"context"
	"encoding/json"
	"errors"
	"io"
	"net/http"
	"net/http/httptest"
	"os"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"slabwright/report"
)

func ask(h http.Handler, method, target string, change func(*http.Request)) *http.Response {
	r := httptest.NewRequest(method, target, nil)
	r.Host = "127.0.0.1:8080"
	if change != nil {
		change(r)
	}
	w := httptest.NewRecorder()
	h.ServeHTTP(w, r)
	return w.Result()
}

func text(t *testing.T, r *http.Response) string {
	t.Helper()
	data, err := io.ReadAll(r.Body)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// TestContentIsTheContent holds that what goes in comes out as the same JSON.
func TestContentIsTheContent(t *testing.T) {
	want, err := json.Marshal(fixture(t))
	if err != nil {
		t.Fatal(err)
	}
	r := ask(filled(t), "GET", "/api/content", nil)
	if got := text(t, r); got != string(want) {
		t.Errorf("%d bytes came out, %d went in, and they differ", len(got), len(want))
	}
	if kind := r.Header.Get("Content-Type"); kind != "application/json; charset=utf-8" {
		t.Errorf("Content-Type %q", kind)
	}
}

// TestOnlyThisComputer holds that a name pointed at this computer is not answered.
func TestOnlyThisComputer(t *testing.T) {
	h := filled(t)
	for host, want := range map[string]int{
		"127.0.0.1:8080": 200, "localhost": 200, "LOCALHOST:1": 200, "[::1]:8080": 200, "127.8.9.1": 200, "localhost.": 200,
		"example.org": 421, "localhost.example.org": 421, "127.0.0.1.example.org:80": 421, "10.0.0.5:8080": 421, "": 421, "0.0.0.0": 421,
	} {
		for _, target := range []string{"/", "/api/content", "/report.pdf"} {
			if r := ask(h, "GET", target, func(r *http.Request) { r.Host = host }); r.StatusCode != want {
				t.Errorf("host %q %s: status %d, want %d", host, target, r.StatusCode, want)
			}
		}
	}
}

func TestOnlyReading(t *testing.T) {
	h := filled(t)
	for _, method := range []string{"POST", "PUT", "DELETE", "PATCH", "OPTIONS", "TRACE"} {
		if r := ask(h, method, "/api/content", nil); r.StatusCode != http.StatusMethodNotAllowed {
			t.Errorf("%s: status %d, want 405", method, r.StatusCode)
		}
	}
	cross := func(r *http.Request) {
		r.Header.Set("Sec-Fetch-Site", "cross-site")
		r.Header.Set("Sec-Fetch-Mode", "no-cors")
	}
	if r := ask(h, "GET", "/api/content", cross); r.StatusCode != http.StatusForbidden {
		t.Errorf("a question of another site: status %d, want 403", r.StatusCode)
	}
}

func TestHeaders(t *testing.T) {
	h := filled(t)
	for _, target := range []string{"/", "/app.js", "/api/content", "/api/progress", "/nothing"} {
		r := ask(h, "GET", target, nil)
		csp := r.Header.Get("Content-Security-Policy")
		if !strings.Contains(csp, "default-src 'none'") || strings.Contains(csp, "script-src 'self' 'unsafe") || strings.Contains(csp, "http") {
			t.Errorf("%s: Content-Security-Policy %q", target, csp)
		}
		if r.Header.Get("X-Content-Type-Options") != "nosniff" {
			t.Errorf("%s: not nosniff", target)
		}
	}
	h = Handler(func(context.Context) (*report.Content, error) { return fixture(t), nil }, Options{
		PDF:     func(io.Writer, *report.Content) error { return nil },
		Drawing: func(io.Writer, *report.Content) error { return nil },
	})
	if csp := ask(h, "GET", "/report.pdf", nil).Header.Get("Content-Security-Policy"); csp != "frame-ancestors 'none'" {
		t.Errorf("a PDF viewer does not start under %q", csp)
	}
	if csp := ask(h, "GET", "/plan.svg", nil).Header.Get("Content-Security-Policy"); !strings.Contains(csp, "sandbox") || strings.Contains(csp, "script-src") {
		t.Errorf("a drawing may run scripts under %q", csp)
	}
	if page := text(t, ask(h, "GET", "/", nil)); strings.Contains(page, "<script>") || strings.Contains(page, "style=") {
		t.Error("the page has a script or style written into it, which its own headers forbid")
	}
}

func TestFiles(t *testing.T) {
	h := filled(t)
	for target, want := range map[string]int{"/": 200, "/app.css": 200, "/LICENCES.txt": 200, "/nothing": 404, "/../go.mod": 307 /* to /go.mod */, "/go.mod": 404, "/dist/app.js": 404, "/plan.svg": 404} {
		if r := ask(h, "GET", target, nil); r.StatusCode != want {
			t.Errorf("%s: status %d, want %d", target, r.StatusCode, want)
		}
	}
	tag := ask(h, "GET", "/app.js", nil).Header.Get("ETag")
	if r := ask(h, "GET", "/app.js", func(r *http.Request) { r.Header.Set("If-None-Match", tag) }); r.StatusCode != http.StatusNotModified {
		t.Errorf("a known file: status %d, want 304", r.StatusCode)
	}
}

// TestWorkedOutOnce holds that many questions start one working-out, that a failed
// one is not kept, and that a changed job is worked out again.
func TestWorkedOutOnce(t *testing.T) {
	var runs atomic.Int32
	var stamp atomic.Value
	stamp.Store("a")
	h := Handler(func(context.Context) (*report.Content, error) {
		if runs.Add(1) == 1 {
			return nil, errors.Join(errors.New("first"), errors.New("second"))
		}
		return &report.Content{}, nil
	}, Options{Fresh: func() string { return stamp.Load().(string) }})
	r := ask(h, "GET", "/api/content", nil)
	var wrong struct{ Problems []string }
	if err := json.NewDecoder(r.Body).Decode(&wrong); err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff([]string{"first", "second"}, wrong.Problems); d != "" || r.StatusCode != 422 {
		t.Errorf("status %d, problems %s", r.StatusCode, d)
	}
	for range 5 {
		if r := ask(h, "GET", "/api/content", nil); r.StatusCode != 200 {
			t.Fatalf("status %d", r.StatusCode)
		}
	}
	if n := runs.Load(); n != 2 {
		t.Errorf("worked out %d times, want once after the failure", n)
	}
	stamp.Store("b")
	ask(h, "GET", "/api/content", nil)
	if n := runs.Load(); n != 3 {
		t.Errorf("a changed job: worked out %d times, want 3", n)
	}
}

// TestOwnMistake holds that a panic in the working-out is told and ends nothing.
func TestOwnMistake(t *testing.T) {
	h := Handler(func(context.Context) (*report.Content, error) { panic("earlyage: layers out of order") }, Options{})
	r := ask(h, "GET", "/api/content", nil)
	if body := text(t, r); r.StatusCode != 422 || !strings.Contains(body, "layers out of order") {
		t.Errorf("status %d: %s", r.StatusCode, body)
	}
}

func TestPapers(t *testing.T) {
	h := Handler(func(context.Context) (*report.Content, error) { return fixture(t), nil }, Options{
		PDF: func(w io.Writer, c *report.Content) error {
			_, err := io.WriteString(w, "%PDF "+c.Head.Number)
			return err
		},
		HTML: func(w io.Writer, _ *report.Content) error {
			if _, err := io.WriteString(w, "<p>half"); err != nil {
				return err
			}
			return errors.New("no font")
		},
	})
	if got := text(t, ask(h, "GET", "/report.pdf", nil)); got != "%PDF 2025-117" {
		t.Errorf("report.pdf is %q", got)
	}
	if r := ask(h, "GET", "/report.html", nil); r.StatusCode != 500 || strings.Contains(text(t, r), "half") {
		t.Errorf("a paper that could not be made: status %d, and half of it was sent", r.StatusCode)
	}
	var p struct{ Papers []string }
	if err := json.NewDecoder(ask(h, "GET", "/api/progress", nil).Body).Decode(&p); err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff([]string{"report.pdf", "report.html", "api/content"}, p.Papers); d != "" {
		t.Error(d)
	}
}

func TestOpen(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	address := make(chan string, 1)
	done := make(chan error, 1)
	go func() { done <- Open(ctx, 0, filled(t), func(a string) { address <- a }) }()
	a := <-address
	r, err := http.Get(a + "api/progress")
	if err != nil {
		t.Fatal(err)
	}
	if body := text(t, r); !strings.Contains(body, `"state":"working"`) {
		t.Errorf("progress: %s", body)
	}
	if err := r.Body.Close(); err != nil {
		t.Fatal(err)
	}
	stop()
	select {
	case err := <-done:
		if err != nil {
			t.Errorf("closing: %v", err)
		}
	case <-time.After(5 * time.Second):
		t.Fatal("the server did not close within 5 s")
	}
	if err := Open(context.Background(), 70000, nil, nil); err == nil || !strings.Contains(err.Error(), "70000") {
		t.Errorf("port 70000: %v", err)
	}
}

// TestProductKeepsTheBundlerOut holds that no source of this package names the bundler.
func TestProductKeepsTheBundlerOut(t *testing.T) {
	entries, err := os.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		if name := e.Name(); strings.HasSuffix(name, ".go") && !strings.HasSuffix(name, "_test.go") {
			data, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			if strings.Contains(string(data), "evanw") {
				t.Errorf("%s imports the bundler", name)
			}
		}
	}
}
