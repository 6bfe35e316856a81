package web

import (
	"context"
	"crypto/sha256"
	"embed"
	"encoding/json"
	"fmt"
	"io"
	"io/fs"
	"maps"
	"mime"
	"net"
	"net/http"
	"path"
	"slices"
	"strings"

	"slabwright/report"
)

//go:embed dist
var dist embed.FS

// Options are what else the server can show. Every field may be left out.
type Options struct {
	Job       string                                 // shown while the answer is worked out
	Progress  *Progress                              // what is being worked out
	Fresh     func() string                          // changes when the job has changed, so that it is worked out again
	Empty     func(error) bool                       // true for the error of a job that only lacks its first facts
	PDF       func(io.Writer, *report.Content) error // /report.pdf
	HTML      func(io.Writer, *report.Content) error // /report.html
	Drawing   func(io.Writer, *report.Content) error // /plan.svg
	Asks      map[string]Ask                         // questions that carry something, by name
	LogErrors func(what string, err error)           // answers that could not be written
}

// Handler serves the app and, under /api/content, the content as JSON. The
// function is called at the first question, and again only after it failed or
// Options.Fresh gave another text; its context is not that of the question.
func Handler(content func(context.Context) (*report.Content, error), o Options) http.Handler {
	if o.Progress == nil {
		o.Progress = &Progress{}
	}
	s := &server{options: o, work: &work{fill: content, fresh: o.Fresh, progress: o.Progress}, files: readFiles()}
	mux := http.NewServeMux()
	mux.HandleFunc("/api/content", s.content)
	mux.HandleFunc("/api/progress", s.progress)
	mux.HandleFunc(askPath, s.ask)
	for _, p := range s.papers() {
		mux.HandleFunc("/"+p.name, s.paper(p))
	}
	mux.HandleFunc("/", s.file)
	return guard(mux)
}

type server struct {
	options Options
	work    *work
	files   map[string]file
}

// contentSecurity lets the page load from this server alone and run no script
// written into the page.
const contentSecurity = "default-src 'none'; script-src 'self'; style-src 'self'; font-src 'self'; img-src 'self' data:; connect-src 'self'; " +
	"base-uri 'none'; form-action 'none'; frame-ancestors 'none'; require-trusted-types-for 'script'"

// paperSecurity is for the printed report as a page: its own styles, no script.
const paperSecurity = "default-src 'none'; style-src 'unsafe-inline'; img-src data:; font-src data:; base-uri 'none'; form-action 'none'; frame-ancestors 'none'; sandbox"

// pdfSecurity leaves a browser's own PDF viewer alone, which will not start in a
// sandbox or where nothing may be loaded.
const pdfSecurity = "frame-ancestors 'none'"

// guard lets in only questions asked of this computer by name; all are reading but
// those put to askPath by this page itself. The check of the name stops a page of
// another site whose name was pointed at this computer.
func guard(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		h := w.Header()
		h.Set("Content-Security-Policy", contentSecurity)
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("Referrer-Policy", "no-referrer")
		h.Set("Cross-Origin-Opener-Policy", "same-origin")
		h.Set("Cross-Origin-Resource-Policy", "same-origin")
		h.Set("Permissions-Policy", "camera=(), geolocation=(), microphone=()")
		if !loopback(r.Host) {
			http.Error(w, "This address answers only to localhost and 127.0.0.1.", http.StatusMisdirectedRequest)
			return
		}
		if site := r.Header.Get("Sec-Fetch-Site"); site == "cross-site" && r.Header.Get("Sec-Fetch-Mode") != "navigate" {
			http.Error(w, "Another site asked for this.", http.StatusForbidden)
			return
		}
		asked := strings.HasPrefix(r.URL.Path, askPath)
		switch {
		case asked && r.Method != http.MethodPost:
			h.Set("Allow", "POST")
			http.Error(w, "A question here carries something with it: POST is answered.", http.StatusMethodNotAllowed)
		case asked && !mayAsk(r):
			http.Error(w, "Only this page itself may ask that, as JSON.", http.StatusForbidden)
		case !asked && r.Method != http.MethodGet && r.Method != http.MethodHead:
			h.Set("Allow", "GET, HEAD")
			http.Error(w, "This page only reads: GET and HEAD are answered.", http.StatusMethodNotAllowed)
		default:
			next.ServeHTTP(w, r)
		}
	})
}

// loopback reports whether a Host header names this computer itself.
func loopback(host string) bool {
	name, _, err := net.SplitHostPort(host)
	if err != nil {
		name = host
	}
	name = strings.TrimSuffix(strings.ToLower(strings.Trim(name, "[]")), ".")
	if name == "localhost" {
		return true
	}
	ip := net.ParseIP(name)
	return ip != nil && ip.IsLoopback()
}

func (s *server) content(w http.ResponseWriter, r *http.Request) {
	data, stage, err := s.contentOf(r)
	if err != nil {
		if r.Context().Err() != nil {
			return // nobody is waiting any more
		}
		s.json(w, http.StatusUnprocessableEntity, struct {
			Empty    bool     `json:"empty,omitempty"`
			Problems []string `json:"problems"`
		}{s.options.Empty != nil && s.options.Empty(err), problems(err)})
		return
	}
	w.Header().Set("Content-Type", "application/json; charset=utf-8")
	w.Header().Set("Cache-Control", "no-store")
	w.Header().Set(stageHeader, stage)
	s.write(w, "content", data)
}

// contentOf is the JSON of the whole answer; with ?stage=first, of the first one there is.
// Its stage is "first" while it is worked on, "stopped", or "whole".
func (s *server) contentOf(r *http.Request) (data []byte, stage string, err error) {
	if r.URL.Query().Get("stage") == "first" {
		var whole bool
		if data, whole, err = s.work.soonest(r.Context()); err == nil && !whole {
			stage = "first"
			if state, _ := s.work.state(); state == "stopped" {
				stage = "stopped"
			}
			return data, stage, nil
		}
		return data, "whole", err
	}
	run, err := s.work.get(r.Context())
	if err != nil {
		return nil, "", err
	}
	if run.stopped {
		return run.json, "stopped", nil
	}
	return run.json, "whole", nil
}

// stageHeader tells with the content how far it is worked out.
const stageHeader = "Slabwright-Stage"

func (s *server) progress(w http.ResponseWriter, _ *http.Request) {
	var papers []string
	for _, p := range s.papers() {
		papers = append(papers, p.name)
	}
	steps, share := s.options.Progress.Steps()
	state, first := s.work.state()
	s.json(w, http.StatusOK, struct {
		State  string   `json:"state"` // working, ready, stopped, wrong, empty
		First  bool     `json:"first"` // a first answer is there
		Steps  []Step   `json:"steps"`
		Share  float64  `json:"share"` // of the whole that is behind, 0-1
		Job    string   `json:"job,omitempty"`
		Papers []string `json:"papers"`
		Asks   []string `json:"asks"` // questions that are answered
	}{state, first, steps, share, s.options.Job, append(papers, "api/content"), slices.Sorted(maps.Keys(s.options.Asks))})
}

func (s *server) json(w http.ResponseWriter, status int, v any) {
	w.Header().Set("Content-Type", "application/json; charset=utf-8")
	w.Header().Set("Cache-Control", "no-store")
	w.WriteHeader(status)
	if err := json.NewEncoder(w).Encode(v); err != nil {
		s.log("json", err)
	}
}

func (s *server) write(w io.Writer, what string, data []byte) {
	if _, err := w.Write(data); err != nil {
		s.log(what, err)
	}
}

func (s *server) log(what string, err error) {
	if s.options.LogErrors != nil {
		s.options.LogErrors(what, err)
	}
}

// file is one file of the app, with the tag by which a browser knows it again.
type file struct {
	data []byte
	kind string
	tag  string
}

func readFiles() map[string]file {
	files := map[string]file{}
	entries, err := fs.ReadDir(dist, "dist")
	if err != nil {
		panic("web: the app is not in the program: " + err.Error())
	}
	for _, e := range entries {
		data, err := fs.ReadFile(dist, "dist/"+e.Name())
		if err != nil {
			panic("web: " + err.Error())
		}
		files[e.Name()] = file{data, kindOf(e.Name()), fmt.Sprintf(`"%x"`, sha256.Sum256(data))[:34] + `"`}
	}
	return files
}

// kindOf does not ask the computer, whose table may be wrong.
func kindOf(name string) string {
	switch path.Ext(name) {
	case ".js":
		return "text/javascript; charset=utf-8"
	case ".css":
		return "text/css; charset=utf-8"
	case ".html":
		return "text/html; charset=utf-8"
	case ".woff2":
		return "font/woff2"
	case ".txt":
		return "text/plain; charset=utf-8"
	}
	return mime.TypeByExtension(path.Ext(name))
}

func (s *server) file(w http.ResponseWriter, r *http.Request) {
	name := strings.TrimPrefix(r.URL.Path, "/")
	if name == "" {
		name = "index.html"
	}
	f, ok := s.files[name]
	if !ok {
		http.Error(w, "There is no page here. The slab is at /.", http.StatusNotFound)
		return
	}
	w.Header().Set("Content-Type", f.kind)
	w.Header().Set("Cache-Control", "no-cache")
	w.Header().Set("ETag", f.tag)
	if r.Header.Get("If-None-Match") == f.tag {
		w.WriteHeader(http.StatusNotModified)
		return
	}
	s.write(w, name, f.data)
}
