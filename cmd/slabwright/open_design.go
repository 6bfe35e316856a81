package main

import (
	"context"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"sync"

	"slabwright/job"
	"slabwright/plan"
	"slabwright/web"
)

// designDesk answers what the app asks of the joints of the next slab. The pours are
// followed at the first question, and again when job.json has changed.
type designDesk struct {
	dir string

	mu       sync.Mutex
	stamp    string
	designer *job.Designer
	err      error
}

func (k *designDesk) asks() map[string]web.Ask {
	return map[string]web.Ask{
		"look": deskAsk(k, func(ctx context.Context, g *job.Designer, q question) (any, error) {
			return g.Look(ctx, q.Slab)
		}),
		"edit": deskAsk(k, func(ctx context.Context, g *job.Designer, q question) (any, error) {
			return g.Edit(ctx, q.Slab, q.Edit)
		}),
		"chance": deskAsk(k, func(ctx context.Context, g *job.Designer, q question) (any, error) {
			return g.Chance(ctx, q.Slab)
		}),
		"propose": deskAsk(k, func(ctx context.Context, g *job.Designer, q question) (any, error) {
			return g.Propose(ctx, q.Slab, nil)
		}),
		"save": k.save,
	}
}

// question is what the app sends: the slab as it stands on the page, and what to do to it.
type question struct {
	Slab plan.Slab `json:"slab"`
	Edit job.Edit  `json:"edit"`
}

func deskAsk(k *designDesk, answer func(context.Context, *job.Designer, question) (any, error)) web.Ask {
	return func(ctx context.Context, asked json.RawMessage) (any, error) {
		var q question
		if err := json.Unmarshal(asked, &q); err != nil {
			return nil, fmt.Errorf("the plan on the page cannot be read: %w", err)
		}
		g, err := k.ready()
		if err != nil {
			return nil, err
		}
		return answer(ctx, g, q)
	}
}

// ready returns the designer of the job as it stands in its folder.
func (k *designDesk) ready() (*job.Designer, error) {
	k.mu.Lock()
	defer k.mu.Unlock()
	if now := stamp(k.dir); k.designer == nil || now != k.stamp {
		k.stamp = now
		k.designer, k.err = newDesigner(k.dir)
	}
	return k.designer, k.err
}

// newDesigner is not given up when one question is: the next will need it too.
func newDesigner(dir string) (*job.Designer, error) {
	j, err := soundJob(dir)
	if err != nil {
		return nil, err
	}
	return job.NewDesigner(context.Background(), j, os.DirFS(dir), nil)
}

// save puts the joints and fixtures of the page into job.json. Nothing is written if
// the job would not be sound with them.
func (k *designDesk) save(_ context.Context, asked json.RawMessage) (any, error) {
	var q question
	if err := json.Unmarshal(asked, &q); err != nil {
		return nil, fmt.Errorf("the plan on the page cannot be read: %w", err)
	}
	j, err := job.Load(k.dir)
	if err != nil {
		return nil, err
	}
	if err := j.TakeJoints(q.Slab); err != nil {
		return nil, err
	}
	if err := soundness(j, k.dir); err != nil {
		return nil, err
	}
	if err := j.Save(k.dir); err != nil {
		return nil, err
	}
	return map[string]string{"where": filepath.Join(filepath.Base(k.dir), job.FileName)}, nil
}
