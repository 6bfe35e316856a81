//go:build unix

package earlyage

import (
	"context"
	"syscall"
	"testing"
	"time"
)

// cpuTime is the time this process has had on all cores.
func cpuTime() time.Duration {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		return 0
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}

// Processor time of one member and of a window of 200, whatever else the machine
// does: a window on two idle cores takes half of cpu-s.
func BenchmarkProcessorTime(b *testing.B) {
	saw, _ := SawFor("ordinary", "medium")
	for name, hours := range map[string]float64{"window of 48 h": 48, "window of 72 h": 72} {
		b.Run(name, func(b *testing.B) {
			p := Pour{Column: mild(b), Restraint: usualRestraint(), Count: 200, Cores: 2}
			p.Column.Until = hours
			start := cpuTime()
			for b.Loop() {
				if _, err := Window(context.Background(), p, saw, 0.1); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric((cpuTime()-start).Seconds()/float64(b.N), "cpu-s/op")
		})
	}
	b.Run("member of a week", func(b *testing.B) {
		c := mild(b)
		c.Until = 168
		c.sampled = c.ask()
		start := cpuTime()
		for b.Loop() {
			if _, err := c.Run(context.Background()); err != nil {
				b.Fatal(err)
			}
		}
		b.ReportMetric(1000*(cpuTime()-start).Seconds()/float64(b.N), "cpu-ms/op")
	})
}
