package web

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"mime"
	"net/http"
	"net/url"
	"strings"
)

// Ask answers one question that carries something with it, such as a joint that
// was moved: JSON in, JSON out. The context ends when nobody waits any more.
type Ask func(ctx context.Context, question json.RawMessage) (any, error)

// askPath is where such questions are put: /api/ask/NAME.
const askPath = "/api/ask/"

// longestQuestion is the most that one question may carry, bytes. The plan of a
// yard with a thousand joints takes a tenth of it.
const longestQuestion = 4 << 20

// ask answers POST /api/ask/NAME with what Options.Asks holds under that name.
func (s *server) ask(w http.ResponseWriter, r *http.Request) {
	answer, ok := s.known(strings.TrimPrefix(r.URL.Path, askPath))
	if !ok {
		http.Error(w, "This question is not known here.", http.StatusNotFound)
		return
	}
	question, err := readQuestion(w, r)
	if err != nil {
		s.refuse(w, err)
		return
	}
	said, err := s.answerSafely(r.Context(), answer, question)
	switch {
	case r.Context().Err() != nil:
		return // nobody is waiting any more
	case err != nil:
		s.refuse(w, err)
	default:
		s.json(w, http.StatusOK, said)
	}
}

// known is the answer to a question by its name. Stopping the replays and going on with
// them are always known.
func (s *server) known(name string) (Ask, bool) {
	switch name {
	case "stop":
		return yesOrNo(s.work.halt), true
	case "go-on":
		return yesOrNo(s.work.goOn), true
	}
	answer, ok := s.options.Asks[name]
	return answer, ok
}

func yesOrNo(do func() bool) Ask {
	return func(context.Context, json.RawMessage) (any, error) { return map[string]bool{"done": do()}, nil }
}

// answerSafely turns a mistake of the program into an answer that says so.
func (s *server) answerSafely(ctx context.Context, answer Ask, question json.RawMessage) (said any, err error) {
	defer func() {
		if p := recover(); p != nil {
			s.log("ask", fmt.Errorf("%v", p))
			err = fmt.Errorf("the program met a mistake of its own: %v. The job is unharmed; please report this text", p)
		}
	}()
	return answer(ctx, question)
}

func (s *server) refuse(w http.ResponseWriter, err error) {
	s.json(w, http.StatusUnprocessableEntity, struct {
		Problems []string `json:"problems"`
	}{problems(err)})
}

func readQuestion(w http.ResponseWriter, r *http.Request) (json.RawMessage, error) {
	data, err := io.ReadAll(http.MaxBytesReader(w, r.Body, longestQuestion))
	var tooLong *http.MaxBytesError
	if errors.As(err, &tooLong) {
		return nil, fmt.Errorf("the question is longer than %d MB, which is more than any plan takes", longestQuestion>>20)
	}
	if err != nil {
		return nil, fmt.Errorf("the question broke off: %w", err)
	}
	if !json.Valid(data) {
		return nil, errors.New("the question is not JSON")
	}
	return data, nil
}

// mayAsk reports whether a question that carries something comes from this page
// itself: a page of another site can neither send JSON without asking first nor
// hide where it comes from.
func mayAsk(r *http.Request) bool {
	kind, _, err := mime.ParseMediaType(r.Header.Get("Content-Type"))
	if err != nil || kind != "application/json" {
		return false
	}
	if site := r.Header.Get("Sec-Fetch-Site"); site != "" && site != "same-origin" {
		return false
	}
	origin := r.Header.Get("Origin")
	if origin == "" {
		return true
	}
	from, err := url.Parse(origin)
	return err == nil && from.Host == r.Host
}
