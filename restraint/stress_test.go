package restraint

import (
	"context"
	"math"
	"reflect"
	"testing"

	"slabwright/plan"
)

// layoutYard is a yard whose joints are all open and whose fixtures stand free: what a
// layout is drawn on.
func layoutYard() Model {
	m := yard()
	for i := range m.Holds {
		m.Holds[i].Give = 0.01
	}
	return m
}

func greatest(f Field) (most float64, at plan.Point) {
	for t, v := range f.Most {
		if v > most {
			most, at = v, f.Triangles[t][0].Plus(f.Triangles[t][1]).Plus(f.Triangles[t][2]).Times(1./3)
		}
	}
	return most, at
}

// One search at an hour finds nearly what following all the hours before finds, where
// nothing cracks.
func TestStressAgainstReplay(t *testing.T) {
	for _, c := range []struct {
		name string
		of   Model
	}{{"panel", column(true)}, {"infill", infill(false)}, {"infill free", infill(true)}, {"row", row(1, 8, 12)}} {
		for _, hour := range []float64{48, 24 * 60} {
			m := c.of
			at := m.Pours[0].At
			m.Pours[0].At = func(h float64) Concrete {
				v := at(h)
				if v.Modulus > 0 {
					v.Strength = 40e6 // nothing cracks
				}
				return v
			}
			r := replay(t, m, UsualHours(hour)...)
			f, err := m.Stress(context.Background(), hour)
			if err != nil {
				t.Fatal(err)
			}
			want, where := greatest(r.Fields[0])
			got, here := greatest(*f)
			t.Logf("%s hour %.0f: %.3f MPa at %.2f, followed %.3f at %.2f", c.name, hour, got/1e6, here, want/1e6, where)
			if math.Abs(got-want) > 0.1*want {
				t.Errorf("%s hour %.0f: %.3f MPa, followed %.3f", c.name, hour, got/1e6, want/1e6)
			}
		}
	}
}

// A line dragged away and back gives what it gave at first, and what a model drawn
// there from the start gives.
func TestDrag(t *testing.T) {
	m := layoutYard()
	m.Settings.Size = 0.7
	d, first, err := m.Drag(context.Background(), "SA2", 24*28)
	if err != nil {
		t.Fatal(err)
	}
	var moved *Field
	for _, x := range []float64{10.6, 11.3, 8.9} {
		if moved, err = d.To(context.Background(), path(x, 0, x, 5.5)); err != nil {
			t.Fatal(err)
		}
	}
	there := m
	there.Lines = append([]Line(nil), m.Lines...)
	for i := range there.Lines {
		if there.Lines[i].ID == "SA2" {
			there.Lines[i].Path = path(8.9, 0, 8.9, 5.5)
		}
	}
	afresh, err := there.Stress(context.Background(), 24*28)
	if err != nil {
		t.Fatal(err)
	}
	a, _ := greatest(*moved)
	b, _ := greatest(*afresh)
	within(t, "greatest tension, dragged against drawn", a, b, 0.1)
	within(t, "mean tension, dragged against drawn", meanMost(*moved), meanMost(*afresh), 0.03)
	back, err := d.To(context.Background(), path(10, 0, 10, 5.5))
	if err != nil {
		t.Fatal(err)
	}
	within(t, "mean tension, back again", meanMost(*back), meanMost(*first), 0.01)
	if _, err := d.To(context.Background(), path(90, 0, 90, 5.5)); err == nil {
		t.Error("dragged off the slab")
	}
	if again, err := d.To(context.Background(), path(10, 0, 10, 5.5)); err != nil || !reflect.DeepEqual(again.Triangles, back.Triangles) {
		t.Errorf("after a refusal: %v", err)
	}
	if _, _, err := m.Drag(context.Background(), "none", 100); err == nil {
		t.Error("a line that is not there")
	}
}

// meanMost is the tension in the mean over the plan.
func meanMost(f Field) float64 {
	sum, whole := 0.0, 0.0
	for i, t := range f.Triangles {
		a := t[1].Minus(t[0]).Cross(t[2].Minus(t[0]))
		sum += a * math.Max(0, f.Most[i])
		whole += a
	}
	return sum / whole
}

// A joint dragged on 350 m².
func BenchmarkDrag(b *testing.B) {
	for name, m := range map[string]Model{"fine": layoutYard(), "quick": layoutYard().Quick()} {
		b.Run(name, func(b *testing.B) {
			d, f, err := m.Drag(context.Background(), "SA2", 24*28)
			if err != nil {
				b.Fatal(err)
			}
			i := 0
			for b.Loop() {
				x := 9.4 + 0.07*float64(i%17)
				i++
				if f, err = d.To(context.Background(), path(x, 0, x, 5.5)); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(float64(len(f.Triangles)), "triangles")
			b.ReportMetric(float64(d.view.last.state.rounds), "rounds")
		})
	}
}
