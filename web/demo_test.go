package web

import (
	"context"
	"errors"
	"io/fs"
	"strings"
	"testing"
	"time"

	"slabwright/job"
	"slabwright/report"
)

// demo serves the worked example as the program would: read, diagnosed, shown.
func demo(progress *Progress) (func(context.Context) (*report.Content, error), error) {
	data, err := fs.ReadFile(job.DemoFS(), job.FileName)
	if err != nil {
		return nil, err
	}
	return func(ctx context.Context) (*report.Content, error) {
		j, err := job.Decode(data)
		if err != nil {
			return nil, err
		}
		return job.DiagnoseInStages(ctx, j, job.DemoFS(), progress.Say, func(s job.Stage) {
			if s.First {
				progress.First(s.Content)
			}
		})
	}, nil
}

// TestDemo shows the worked example, diagnosed for real, on the screens that
// carry most, at both widths.
func TestDemo(t *testing.T) {
	progress := &Progress{}
	content, err := demo(progress)
	if err != nil {
		t.Fatal(err)
	}
	s := newScreen(t, Handler(content, Options{Progress: progress, Empty: func(err error) bool {
		var unknown job.NotKnown
		return errors.As(err, &unknown)
	}}))
	s.start()
	for _, size := range []struct {
		name          string
		width, height int64
	}{{"desk", 1440, 900}, {"phone", 390, 844}} {
		s.size(size.width, size.height)
		s.open("keys")
		for range 30 { // until the whole answer is there
			if eval[bool](s, `!!document.querySelector(".stage-none")`) {
				break
			}
			time.Sleep(time.Second)
		}
		for _, place := range []string{"page-one", "finding/F1", "pour/A", "panel/P2", "replay", "slab"} {
			s.turn(place)
			s.fits(size.name + " demo " + place)
			s.axe(size.name + " demo " + place)
			s.shot("demo " + size.name + " " + strings.ReplaceAll(place, "/", "-"))
		}
	}
	if steps, share := progress.Steps(); len(steps) < 3 || share != 1 || !steps[len(steps)-1].Done {
		t.Errorf("the page was told of %d steps and a share of %v", len(steps), share)
	}
	s.quiet()
}
