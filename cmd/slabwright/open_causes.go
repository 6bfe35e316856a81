package main

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"sync"
	"time"

	"slabwright/job"
	"slabwright/report"
	"slabwright/web"
)

// causeDesk answers what the app asks of the causes of a finding, from what the answer on
// the page was weighed from, and keeps the chances that the engineer sets.
type causeDesk struct {
	dir string

	mu      sync.Mutex
	weighed *job.Weighed
}

func (k *causeDesk) asks() map[string]web.Ask {
	return map[string]web.Ask{"facts": k.facts, "shift": k.shift, "override": k.override}
}

// diagnose works the job out and shows each answer as soon as it stands.
func (k *causeDesk) diagnose(ctx context.Context, j *job.Job, progress *web.Progress) (*report.Content, error) {
	return job.DiagnoseInStages(ctx, j, os.DirFS(k.dir), progress.Say, func(s job.Stage) {
		k.mu.Lock()
		k.weighed = s.Weighed
		k.mu.Unlock()
		if s.First {
			progress.First(s.Content)
		}
	})
}

func (k *causeDesk) ready() (*job.Weighed, error) {
	k.mu.Lock()
	defer k.mu.Unlock()
	if k.weighed == nil {
		return nil, errors.New("the causes are still being weighed; ask again when the first answer is there")
	}
	return k.weighed, nil
}

// causeQuestion is what the app sends: the finding, and facts changed or a chance set.
type causeQuestion struct {
	Finding string             `json:"finding"`
	Facts   []job.SupposedFact `json:"facts"`
	Cause   string             `json:"cause"`
	Set     *job.Override      `json:"set"` // nil takes back the chance that was set
}

func readCauseQuestion(asked json.RawMessage) (q causeQuestion, err error) {
	if err = json.Unmarshal(asked, &q); err != nil {
		err = fmt.Errorf("the question cannot be read: %w", err)
	}
	return q, err
}

func (k *causeDesk) facts(_ context.Context, asked json.RawMessage) (any, error) {
	q, err := readCauseQuestion(asked)
	if err != nil {
		return nil, err
	}
	w, err := k.ready()
	if err != nil {
		return nil, err
	}
	return w.Facts(q.Finding)
}

func (k *causeDesk) shift(_ context.Context, asked json.RawMessage) (any, error) {
	q, err := readCauseQuestion(asked)
	if err != nil {
		return nil, err
	}
	w, err := k.ready()
	if err != nil {
		return nil, err
	}
	return w.Shift(q.Finding, q.Facts)
}

// override sets a chance of a cause with its reason, or takes it back, and saves the job
// if it is sound with it. It answers what stood there before, so that it can be undone.
func (k *causeDesk) override(_ context.Context, asked json.RawMessage) (any, error) {
	q, err := readCauseQuestion(asked)
	if err != nil {
		return nil, err
	}
	k.mu.Lock()
	defer k.mu.Unlock()
	j, err := job.Load(k.dir)
	if err != nil {
		return nil, err
	}
	before := change(j, q)
	if err := soundness(j, k.dir); err != nil {
		return nil, err
	}
	if err := j.Save(k.dir); err != nil {
		return nil, err
	}
	return map[string]any{"before": before}, nil
}

// change puts the chance of a question into the job, or takes it out.
func change(j *job.Job, q causeQuestion) *job.Override {
	if q.Set == nil {
		return j.RemoveOverride(q.Finding, q.Cause)
	}
	o := *q.Set
	o.Finding, o.Cause = q.Finding, q.Cause
	if o.At == nil {
		now := time.Now().UTC().Truncate(time.Second)
		o.At = &now
	}
	return j.SetOverride(o)
}
