package job

import (
	"context"
	"errors"
	"io/fs"

	"slabwright/report"
)

// ReplayOptions say how far and how often a slab is replayed; zero values mean the usual.
type ReplayOptions struct {
	Hours   float64 // after the first truck; two years
	Members int     // of the sample; 60
}

func (o ReplayOptions) filled() ReplayOptions {
	if o.Hours == 0 {
		o.Hours = replayTwoYrs
	}
	if o.Members == 0 {
		o.Members = replayMembers
	}
	return o
}

// Members of the sample of the command and of a whole diagnosis, which has more to do.
const (
	replayMembers   = 60
	besideDiagnosis = 12
)

// replayBeside is the replay of a whole diagnosis: fewer members, so that it stays quick.
func (d *diagnosis) replayBeside() ReplayOptions {
	o := ReplayOptions{Members: besideDiagnosis}.filled()
	if own := d.job.Basis.Members; own > 0 {
		o.Members = min(o.Members, own)
	}
	return o
}

// Limits of what can be asked of a replay.
const (
	LeastReplayHours  = 6.0
	MostReplayHours   = 5 * 365 * hoursPerDay
	MostReplayMembers = 2000
)

// Replay follows the slab in plan from its first truck on and fills Content.Replay and
// what it stands on. When ctx ends on the way, what had come by then is returned with
// the error and says that it is partial.
func Replay(ctx context.Context, j *Job, files fs.FS, o ReplayOptions, say Progress) (*report.Content, error) {
	d, err := begin(ctx, j, files, say)
	if err != nil {
		return nil, err
	}
	d.head()
	d.drawing()
	d.basis()
	if err := d.followPours(); err != nil {
		return nil, err
	}
	err = d.replay(o.filled(), 0.1, 1)
	if err != nil && (d.content.Replay == nil || !errors.Is(err, ctx.Err())) {
		return nil, err
	}
	return d.finish(), err
}
