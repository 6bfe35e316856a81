package web

import (
	"bytes"
	"io"
	"net/http"
	"strings"

	"slabwright/report"
)

// paper is one printed thing made from the content.
type paper struct {
	name     string
	kind     string
	security string // Content-Security-Policy
	make     func(io.Writer, *report.Content) error
}

func (s *server) papers() []paper {
	var out []paper
	for _, p := range []paper{
		{"report.pdf", "application/pdf", pdfSecurity, s.options.PDF},
		{"report.html", "text/html; charset=utf-8", paperSecurity, s.options.HTML},
		{"plan.svg", "image/svg+xml", paperSecurity, s.options.Drawing},
	} {
		if p.make != nil {
			out = append(out, p)
		}
	}
	return out
}

// paper writes the whole thing before sending any of it, so that a mistake half-way
// is told and no half report leaves.
func (s *server) paper(p paper) http.HandlerFunc {
	return func(w http.ResponseWriter, r *http.Request) {
		run, err := s.work.get(r.Context())
		if err != nil {
			if r.Context().Err() == nil {
				http.Error(w, "There is a problem\n\n"+strings.Join(problems(err), "\n"), http.StatusUnprocessableEntity)
			}
			return
		}
		var out bytes.Buffer
		if err := p.make(&out, run.content); err != nil {
			s.log(p.name, err)
			http.Error(w, "The paper could not be made: "+err.Error(), http.StatusInternalServerError)
			return
		}
		w.Header().Set("Content-Type", p.kind)
		w.Header().Set("Cache-Control", "no-store")
		w.Header().Set("Content-Security-Policy", p.security)
		s.write(w, p.name, out.Bytes())
	}
}
