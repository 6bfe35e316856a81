package web

import (
	"context"
	"encoding/json"
	"errors"
	"io"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"slabwright/report"
)

// asking is a server that gives back what it is asked, in capitals.
func asking() http.Handler {
	return Handler(func(context.Context) (*report.Content, error) { return &report.Content{}, nil }, Options{Asks: map[string]Ask{
		"loud": func(_ context.Context, question json.RawMessage) (any, error) {
			var in struct{ Say string }
			if err := json.Unmarshal(question, &in); err != nil {
				return nil, err
			}
			return map[string]string{"said": strings.ToUpper(in.Say)}, nil
		},
		"wrong": func(context.Context, json.RawMessage) (any, error) {
			return nil, errors.New("the joint ends in the air")
		},
		"mistake": func(context.Context, json.RawMessage) (any, error) { panic("a nil plan") },
	}})
}

func put(name, body string, change func(*http.Request)) *http.Response {
	r := httptest.NewRequest("POST", "/api/ask/"+name, strings.NewReader(body))
	r.Host = "127.0.0.1:8080"
	r.Header.Set("Content-Type", "application/json")
	r.Header.Set("Origin", "http://127.0.0.1:8080")
	r.Header.Set("Sec-Fetch-Site", "same-origin")
	if change != nil {
		change(r)
	}
	w := httptest.NewRecorder()
	asking().ServeHTTP(w, r)
	return w.Result()
}

func TestAskAnswers(t *testing.T) {
	for _, c := range []struct {
		name, body string
		status     int
		holds      string
	}{
		{"loud", `{"say":"cut now"}`, 200, `"CUT NOW"`},
		{"wrong", `{}`, 422, "the joint ends in the air"},
		{"mistake", `{}`, 422, "a mistake of its own: a nil plan"},
		{"loud", `{"say":`, 422, "not JSON"},
		{"loud", `"` + strings.Repeat("x", longestQuestion) + `"`, 422, "longer than 4 MB"},
		{"nothing", `{}`, 404, "not known"},
	} {
		r := put(c.name, c.body, nil)
		data, err := io.ReadAll(r.Body)
		if err != nil {
			t.Fatal(err)
		}
		if r.StatusCode != c.status || !strings.Contains(string(data), c.holds) {
			t.Errorf("%s: status %d %q, want %d with %q", c.name, r.StatusCode, data, c.status, c.holds)
		}
	}
}

// TestAskOnlyFromThePage holds that no other site can put such a question.
func TestAskOnlyFromThePage(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*http.Request)
		status int
	}{
		"another origin":        {func(r *http.Request) { r.Header.Set("Origin", "http://example.org") }, 403},
		"another port":          {func(r *http.Request) { r.Header.Set("Origin", "http://127.0.0.1:9090") }, 403},
		"no origin":             {func(r *http.Request) { r.Header.Set("Origin", "null") }, 403},
		"another site":          {func(r *http.Request) { r.Header.Set("Sec-Fetch-Site", "cross-site") }, 403},
		"same site, other port": {func(r *http.Request) { r.Header.Set("Sec-Fetch-Site", "same-site") }, 403},
		"as a form":             {func(r *http.Request) { r.Header.Set("Content-Type", "text/plain") }, 403},
		"another name":          {func(r *http.Request) { r.Host = "example.org" }, 421},
		"reading":               {func(r *http.Request) { r.Method = "GET" }, 405},
		"a script, no browser":  {func(r *http.Request) { r.Header.Del("Origin"); r.Header.Del("Sec-Fetch-Site") }, 200},
	} {
		if r := put("loud", `{"say":"x"}`, c.change); r.StatusCode != c.status {
			t.Errorf("%s: status %d, want %d", name, r.StatusCode, c.status)
		}
	}
}
