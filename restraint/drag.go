package restraint

import (
	"context"
	"errors"
	"fmt"
	"slices"

	"slabwright/internal/mesh"
	"slabwright/plan"
)

// Drag holds a slab at one hour while one of its lines is moved about.
type Drag struct {
	model  Model
	line   int
	view   *view
	lifted *mesh.Lifted
	others []Line
}

// Drag prepares for moving a line of the model, told by its id. The first state is that
// of the model as it is.
func (m Model) Drag(ctx context.Context, line string, hour float64) (*Drag, *Field, error) {
	i := slices.IndexFunc(m.Lines, func(l Line) bool { return l.ID == line })
	if i < 0 {
		return nil, nil, fmt.Errorf("line %q is not in the model; give the id of one of its %d lines", line, len(m.Lines))
	}
	v, err := m.view(hour)
	if err != nil {
		return nil, nil, err
	}
	d := &Drag{model: m, line: i, view: v, others: m.reachedLines()}
	mm, err := mesh.Build(m.domain(d.others, v.set))
	if err != nil {
		return nil, nil, unmeshed(err)
	}
	f, err := v.show(ctx, m, mm)
	if err != nil {
		return nil, nil, err
	}
	d.lifted, err = mm.Lift(i)
	return d, f, err
}

// To moves the line to a path and returns the new state: the mesh changes near the old
// and the new place only, and the search starts from the state before. It is not for
// several goroutines at once.
func (d *Drag) To(ctx context.Context, path []plan.Point) (*Field, error) {
	m := d.model
	m.Lines = slices.Clone(m.Lines)
	m.Lines[d.line].Path = path
	if found := m.Check([]float64{d.view.hour - 1, d.view.hour}); found != nil {
		return nil, errors.Join(found...)
	}
	mm, err := d.place(m)
	if err != nil {
		return nil, unmeshed(err)
	}
	return d.view.show(ctx, m, mm)
}

// place puts the line down in the mesh it was lifted from; where others reached for it
// and now end elsewhere, all is meshed again.
func (d *Drag) place(m Model) (*mesh.Mesh, error) {
	lines := m.reachedLines()
	for i, l := range lines {
		if i != d.line && !slices.Equal(l.Path, d.others[i].Path) {
			return mesh.Build(m.domain(lines, d.view.set))
		}
	}
	mm, err := d.lifted.Place(toMesh(lines[d.line].Path))
	if err != nil {
		return nil, err
	}
	return mm, nil
}
