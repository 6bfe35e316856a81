package job

import (
	"encoding/binary"
	"math"
	"runtime"
	"strings"
	"sync"

	"slabwright/plan"
	"slabwright/report"
	"slabwright/restraint"
)

// Steps in which the field is packed, as its content says.
const (
	stressStep = 0.02 // MPa
	liftStep   = 0.01 // mm
	pointStep  = 0.01 // m
	mostPoints = 1<<16 - 1
)

// field packs the state of the slab at the hours kept. The triangles are those of the
// last hour; an earlier one, whose triangles the cracks had not cut yet, is read at their
// middles.
func (r *replayRun) field() {
	fields := r.result.Fields
	last := fields[len(fields)-1]
	out := report.ReplayField{LiftFrom: "A plate on ground that cannot pull, parted by the joints that are open, under its own weight; the stiffness is eased by the creep since the set."}
	low, high := plan.Ring(r.in.slab.Outline).Box()
	out.Low = roundAt(low)
	points, index := pointsOf(last.Triangles)
	if len(points) > mostPoints || math.Max(high.X-low.X, high.Y-low.Y) > pointStep*mostPoints {
		return // too large to be packed: the rows of events and chances stand without it
	}
	for _, p := range points {
		out.Points = binary.LittleEndian.AppendUint16(out.Points, uint16(math.Round((p.X-low.X)/pointStep)))
		out.Points = binary.LittleEndian.AppendUint16(out.Points, uint16(math.Round((p.Y-low.Y)/pointStep)))
	}
	panel := make([]int, len(last.Triangles))
	for t, corners := range last.Triangles {
		for _, c := range corners {
			out.Triangles = binary.LittleEndian.AppendUint16(out.Triangles, uint16(index[c]))
		}
		panel[t] = r.panelOf(middleOfTriangle(corners))
	}
	r.d.support() // noted among what is assumed before frames are made side by side
	frames, errs := make([]report.ReplayFrame, len(fields)), make([]error, len(fields))
	atOnce(len(fields), func(i int) { frames[i], errs[i] = r.frame(fields[i], last, points, index, panel) })
	for i, frame := range frames {
		if errs[i] != nil {
			out.LiftFrom = "Not worked out: " + errs[i].Error() + "."
		}
		for _, p := range frame.Panels {
			out.Lift = math.Max(out.Lift, p.Lift)
		}
		out.Most = math.Max(out.Most, frame.Model)
		out.Frames = append(out.Frames, frame)
	}
	r.out.Field = out
}

// atOnce runs tasks 0 to n-1, as many at a time as there are cores.
func atOnce(n int, run func(int)) {
	var group sync.WaitGroup
	free := make(chan struct{}, runtime.GOMAXPROCS(0))
	for i := range n {
		free <- struct{}{}
		group.Go(func() {
			run(i)
			<-free
		})
	}
	group.Wait()
}

// pointsOf numbers the places of triangles in the order in which they come.
func pointsOf(triangles [][3]plan.Point) ([]plan.Point, map[plan.Point]int) {
	var points []plan.Point
	index := map[plan.Point]int{}
	for _, t := range triangles {
		for _, p := range t {
			if _, known := index[p]; !known {
				index[p] = len(points)
				points = append(points, p)
			}
		}
	}
	return points, index
}

func middleOfTriangle(t [3]plan.Point) plan.Point { return t[0].Plus(t[1]).Plus(t[2]).Times(1. / 3) }

func (r *replayRun) panelOf(at plan.Point) int {
	for i, p := range r.d.panels {
		if p.Ring.Contains(at) {
			return i
		}
	}
	return 0
}

// frame is one hour of the field.
func (r *replayRun) frame(f, last restraint.Field, points []plan.Point, index map[plan.Point]int, panel []int) (report.ReplayFrame, error) {
	out := report.ReplayFrame{At: r.clockOf(f.Hour), Hours: round(f.Hour, 2), Model: round(f.Beside.Model/1e6, 3), Hand: round(f.Beside.Hand/1e6, 3), Held: r.byName(f.Beside.Why), At2: roundAt(f.Beside.At), Lines: []report.ReplayOpening{}}
	for _, p := range r.d.panels {
		out.Panels = append(out.Panels, report.PanelPeak{Panel: p.ID})
	}
	lifts, err := r.liftAt(f.Hour, points)
	out.Gap = round(r.bendingAt(f.Hour).gap, 1)
	for i := range points {
		lifts[i] *= 1000
		out.Lift = binary.LittleEndian.AppendUint16(out.Lift, uint16(int16(math.Round(math.Max(-300, math.Min(300, lifts[i]))/liftStep))))
	}
	find := finder(f.Triangles)
	for t, corners := range last.Triangles {
		k := find(middleOfTriangle(corners), t)
		share, most := f.Share[k], math.Max(0, f.Most[k])
		out.Share = append(out.Share, packed(100*share))
		out.Stress = append(out.Stress, packed(most/1e6/stressStep))
		p := &out.Panels[panel[t]]
		p.Share, p.Stress = math.Max(p.Share, round(share, 3)), math.Max(p.Stress, round(most/1e6, 3))
		for _, c := range corners {
			p.Lift = math.Max(p.Lift, round(lifts[index[c]], 2))
		}
	}
	for _, o := range f.Openings {
		out.Lines = append(out.Lines, openingRow(o))
	}
	return out, err
}

// byName puts the name of a fixture where a reason has its id.
func (r *replayRun) byName(why string) string {
	for _, f := range r.in.slab.Fixtures {
		if rest, ok := strings.CutPrefix(why, "held by "+f.ID+","); ok {
			return "held by the " + r.d.fixtureName(f.ID) + "," + rest
		}
	}
	return why
}

func packed(v float64) byte { return byte(math.Round(math.Max(0, math.Min(255, v)))) }

// finder returns a search for the triangle that holds a place, or lies nearest to it. It
// tries the one of the same number first: few are cut between two hours.
func finder(triangles [][3]plan.Point) func(at plan.Point, guess int) int {
	return func(at plan.Point, guess int) int {
		if guess < len(triangles) && plan.Ring(triangles[guess][:]).Contains(at) {
			return guess
		}
		best, least := 0, math.Inf(1)
		for i, t := range triangles {
			if away := middleOfTriangle(t).To(at); away < least {
				best, least = i, away
			}
		}
		return best
	}
}
