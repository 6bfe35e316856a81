package job

import (
	"fmt"
	"sort"
	"strings"
)

// StatusReport says where a job stands, what is missing, what each missing fact
// keeps from being answered, and what to do next.
type StatusReport struct {
	Job      string    `json:"job"`
	Title    string    `json:"title"`
	Steps    []Step    `json:"steps"`
	Errors   []Problem `json:"errors"`   // must be mended first
	Warnings []Problem `json:"warnings"` // worth a look
	Missing  []Missing `json:"missing"`  // facts nobody knows, the most needed first
	Blocked  []Blocked `json:"blocked"`  // answers not given, with what is missing for each
	Next     Next      `json:"next"`
}

// Step is one stage of a job.
type Step struct {
	Name  string `json:"name"`
	State string `json:"state"` // done, begun, open
	Text  string `json:"text"`  // "12 joints, 15 panels"
}

// Missing is one kind of fact that nobody knows.
type Missing struct {
	Field  string   `json:"field"` // the first place it is missing
	What   string   `json:"what"`
	Places int      `json:"places"` // in how many places
	Rank   int      `json:"rank"`   // 1 the model cannot run, 2 answers are missing, 3 answers are wider
	Blocks []string `json:"blocks"`
	Ask    string   `json:"ask"`
}

// Blocked is one answer that is not given.
type Blocked struct {
	Answer  string   `json:"answer"`
	Because []string `json:"because"`
}

// Next is the command to run next.
type Next struct {
	Command string `json:"command"`
	Why     string `json:"why"`
}

// Status returns where the job stands. It works nothing out; it counts what is
// there.
func Status(j *Job) StatusReport {
	s := StatusReport{Job: j.ID, Title: j.Title, Errors: []Problem{}, Warnings: []Problem{}, Missing: []Missing{}, Blocked: []Blocked{}}
	for _, p := range j.Validate() {
		switch p.Level {
		case Error:
			s.Errors = append(s.Errors, p)
		case Warning:
			s.Warnings = append(s.Warnings, p)
		}
	}
	s.Missing = j.missing()
	s.Blocked = blocked(s.Missing)
	s.Steps = []Step{j.stepSlab(), j.stepJoints(), j.stepPours(), j.stepWeather(), j.stepWalks(), j.stepFindings(), j.stepCauses(s)}
	s.Next = j.next(s)
	return s
}

func (j *Job) missing() []Missing {
	absent := j.absent()
	all := []Missing{}
	for _, n := range needs {
		if places := absent[n.Field]; len(places) > 0 {
			what := n.Label
			if names := j.namesAt(places); names != "" {
				what += " (" + names + ")"
			}
			all = append(all, Missing{Field: places[0], What: what, Places: len(places), Rank: n.Rank, Blocks: n.Blocks, Ask: n.Ask})
		}
	}
	sort.SliceStable(all, func(a, b int) bool { return all[a].Rank < all[b].Rank })
	return all
}

// blocked turns the list round: for each answer, what is missing. Facts that only
// widen an answer block nothing.
func blocked(missing []Missing) []Blocked {
	all, at := []Blocked{}, map[string]int{}
	for _, m := range missing {
		if m.Rank > 2 {
			continue
		}
		for _, answer := range m.Blocks {
			i, ok := at[answer]
			if !ok {
				i = len(all)
				at[answer], all = i, append(all, Blocked{Answer: answer})
			}
			all[i].Because = append(all[i].Because, m.What)
		}
	}
	return all
}

// next is the command that takes the job on.
func (j *Job) next(s StatusReport) Next {
	findings, weather := false, len(j.Pours) > 0
	for _, w := range j.Walks {
		findings = findings || len(w.Findings) > 0
	}
	for _, p := range j.Pours {
		weather = weather && p.Weather != "" && p.Start != nil
	}
	switch {
	case len(s.Errors) > 0:
		return Next{"slabwright status", "again, once this is mended in job.json: " + s.Errors[0].Field}
	case len(j.Slabs) == 0:
		return Next{"slabwright open", "there is no slab yet: draw its outline"}
	case findings:
		return Next{"slabwright causes", "rank the causes of what was found"}
	case weather:
		return Next{"slabwright window", "the cut window of the pour"}
	case len(s.Missing) > 0 && s.Missing[0].Rank == 1:
		return Next{"slabwright open", "fill in: " + s.Missing[0].What + ". " + s.Missing[0].Ask}
	}
	return Next{"slabwright open", "walk the slab and note what is there"}
}

// Text is the report for a terminal, one line a thing.
func (s StatusReport) Text() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s  %s\n\n", s.Job, s.Title)
	mark := map[string]string{"done": "[x]", "begun": "[~]", "open": "[ ]"}
	for _, st := range s.Steps {
		fmt.Fprintf(&b, "%s %-20s %s\n", mark[st.State], st.Name, st.Text)
	}
	section := func(title string, n int, line func(i int) string) {
		if n == 0 {
			return
		}
		fmt.Fprintf(&b, "\n%s\n", title)
		for i := range n {
			fmt.Fprintf(&b, "  %s\n", line(i))
		}
	}
	section("To mend first", len(s.Errors), func(i int) string { return s.Errors[i].String() })
	section("Worth a look", len(s.Warnings), func(i int) string { return s.Warnings[i].String() })
	section("Not known", len(s.Missing), func(i int) string {
		m := s.Missing[i]
		return fmt.Sprintf("%s: %s. %s", m.What, strings.Join(m.Blocks, ", "), m.Ask)
	})
	section("Answers not given, or in part only", len(s.Blocked), func(i int) string {
		return s.Blocked[i].Answer + ": " + strings.Join(s.Blocked[i].Because, ", ") + " not known"
	})
	fmt.Fprintf(&b, "\nNext: %s  (%s)\n", s.Next.Command, s.Next.Why)
	return b.String()
}
