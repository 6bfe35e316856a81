//go:build linux

package flexure

import (
	"context"
	"math"
	"syscall"
	"testing"

	"slabwright/plan"
)

// yard is 350 m² of slab with joints both ways and a pit, warped upwards.
func yard() Plate {
	at := func(x, y float64) plan.Point { return plan.Point{X: x, Y: y} }
	p := problemP()
	p.Loads = nil
	p.Slab.Joints = []plan.Joint{
		{ID: "J1", Kind: plan.Sawn, Path: []plan.Point{at(4.8, 0), at(4.8, 15)}},
		{ID: "J2", Kind: plan.Sawn, Path: []plan.Point{at(9.6, 0), at(9.6, 6)}},
		{ID: "J3", Kind: plan.Sawn, Path: []plan.Point{at(14.4, 0), at(14.4, 15)}},
		{ID: "J4", Kind: plan.Sawn, Path: []plan.Point{at(19.2, 0), at(19.2, 15)}},
		{ID: "J5", Kind: plan.Sawn, Path: []plan.Point{at(0, 7.5), at(9, 6.45)}},
	}
	p.Slab.Joints[4].Path = []plan.Point{at(0, 6.45), at(9, 6.45)}
	for _, j := range p.Slab.Joints {
		t := Transfer{Joint: j.ID, Kind: Dowelled, Opening: 0.002, Bars: UsualBars(0.15)}
		p.Joints = append(p.Joints, t)
	}
	return p
}

// BenchmarkDragWheel moves a wheel over the yard: each place is new.
func BenchmarkDragWheel(b *testing.B) {
	for _, c := range []struct {
		name      string
		warp      float64
		triangles bool
	}{{"flat", 0, false}, {"warped", -10, false}, {"warped-triangles", -10, true}} {
		p := yard()
		p.Warp.Difference, p.Triangles = c.warp, c.triangles
		r, err := p.Ready(context.Background())
		if err != nil {
			b.Fatal(err)
		}
		b.Run(c.name, func(b *testing.B) {
			rounds, start := 0, processorTime()
			for i := 0; b.Loop(); i++ {
				s := math.Mod(float64(i)*0.37, 22)
				bent, err := r.Bend(context.Background(), []Load{RoundWheel("w", plan.Point{X: 1 + s, Y: 0.3}, 40e3, 0.8e6)})
				if err != nil {
					b.Fatal(err)
				}
				rounds += bent.Rounds - r.rounds
			}
			b.ReportMetric((processorTime()-start)/float64(b.N), "cpu-ms")
			b.ReportMetric(float64(rounds)/float64(b.N), "rounds")
			b.ReportMetric(float64(len(r.dead)), "unknowns")
		})
	}
}

// BenchmarkDragJoint moves a joint of the yard: mesh, stiffness and contact anew.
func BenchmarkDragJoint(b *testing.B) {
	for _, c := range []struct {
		name string
		warp float64
	}{{"flat", 0}, {"warped", -10}} {
		b.Run(c.name, func(b *testing.B) {
			p := yard()
			p.Warp.Difference = c.warp
			r, err := p.Ready(context.Background())
			if err != nil {
				b.Fatal(err)
			}
			start := processorTime()
			for i := 0; b.Loop(); i++ {
				p := yard()
				p.Warp.Difference = c.warp
				x := 4 + math.Mod(float64(i)*0.13, 1.5)
				p.Slab.Joints[0].Path = []plan.Point{{X: x, Y: 0}, {X: x, Y: 15}}
				r, err = r.Moved(context.Background(), p)
				if err != nil {
					b.Fatal(err)
				}
				if _, err := r.Bend(context.Background(), []Load{RoundWheel("w", plan.Point{X: 7, Y: 0.3}, 40e3, 0.8e6)}); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric((processorTime()-start)/float64(b.N), "cpu-ms")
		})
	}
}

// processorTime returns the time this program has had of all cores, ms: a busy machine
// disturbs it less than the clock.
func processorTime() float64 {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		panic(err)
	}
	return float64(u.Utime.Nano()+u.Stime.Nano()) / 1e6
}
