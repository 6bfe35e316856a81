package report

import (
	"fmt"
	"testing"
)

// many is the fixture with its findings so many times over.
func many(times int) *Content {
	c := fixture()
	once := c.Findings
	for k := 1; k < times; k++ {
		for _, f := range once {
			f.Finding.ID = fmt.Sprintf("%s-%d", f.Finding.ID, k)
			c.Findings = append(c.Findings, f)
		}
	}
	return c
}

func BenchmarkPDF(b *testing.B) {
	for _, times := range []int{1, 10} {
		c := many(times)
		b.Run(fmt.Sprintf("findings=%d", len(c.Findings)), func(b *testing.B) {
			for b.Loop() {
				if _, err := PDF(c); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkHTML(b *testing.B) {
	c := fixture()
	for b.Loop() {
		if _, err := HTML(c); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkPlanSVG(b *testing.B) {
	for _, times := range []int{1, 100} {
		c := many(times)
		b.Run(fmt.Sprintf("findings=%d", len(c.Findings)), func(b *testing.B) {
			for b.Loop() {
				PlanSVG(c)
			}
		})
	}
}
