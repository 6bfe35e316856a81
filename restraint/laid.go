package restraint

import (
	"maps"
	"reflect"
	"slices"

	"slabwright/plan"
)

// laid is the net of a model and its first frame, kept for members of a sample that
// differ in numbers only.
type laid struct {
	of    layout
	net   *net
	lines []Line
	frame *frame
	near  *nearby
}

// layout is what a net and its first frame depend on.
type layout struct {
	Outline  []plan.Point
	Openings [][]plan.Point
	Pours    []Pour // area and thickness
	Lines    []Line // path and kind
	Holds    [][]plan.Point
	Settings Settings // of sizes
}

func layoutOf(m *Model, set Settings) layout {
	l := layout{Outline: m.Slab.Outline, Settings: Settings{Size: set.Size, Fine: set.Fine, Growth: set.Growth, Reach: set.Reach, Poisson: set.Poisson}}
	for _, f := range m.Slab.Fixtures {
		if f.Opening {
			l.Openings = append(l.Openings, f.Shape)
		}
	}
	for _, p := range m.Pours {
		l.Pours = append(l.Pours, Pour{Area: p.Area, Thickness: p.Thickness})
	}
	for _, x := range m.Lines {
		l.Lines = append(l.Lines, Line{Kind: x.Kind, Path: x.Path})
	}
	for _, h := range m.Holds {
		l.Holds = append(l.Holds, h.Path)
	}
	return l
}

// layOut meshes a model and numbers its first frame.
func layOut(m *Model, set Settings) (*laid, error) {
	n, lines, err := newNet(*m, set)
	if err != nil {
		return nil, err
	}
	cut := firstCuts(n, lines)
	l := &laid{of: layoutOf(m, set), net: n, lines: lines, frame: newFrame(n, cut, m, set, nil)}
	l.near = newNearby(l.frame, set.Reach)
	l.frame.around(0) // the fan is filled once, before it is shared
	for key, on := range n.onLine {
		n.onLine[key] = slices.Clip(on)
	}
	return l, nil
}

// layingOut returns a model whose members share one net. It leaves errors to the
// replay.
func (m Model) layingOut() Model {
	if m.Check([]float64{0, 1}) != nil {
		return m
	}
	m.laid, _ = layOut(&m, m.Settings.filled())
	return m
}

// laidFor returns net, lines and frame for a model: copies of those kept, if they
// fit, else new ones.
func laidFor(m *Model, set Settings) (*laid, error) {
	kept := m.laid
	if kept == nil || !reflect.DeepEqual(kept.of, layoutOf(m, set)) {
		return layOut(m, set)
	}
	n := *kept.net
	n.at, n.tri, n.pour = slices.Clone(n.at), slices.Clone(n.tri), slices.Clone(n.pour)
	n.beside, n.onLine, n.onHold = maps.Clone(n.beside), maps.Clone(n.onLine), maps.Clone(n.onHold)
	f := *kept.frame
	f.net, f.system = &n, kept.frame.system.again()
	f.dragOf(m)
	lines := slices.Clone(m.Lines)
	for i := range lines {
		lines[i].Path = kept.lines[i].Path
	}
	return &laid{net: &n, lines: lines, frame: &f, near: kept.near}, nil
}

// firstCuts lists the sides that are open from the start, and their lines.
func firstCuts(n *net, lines []Line) map[side]int {
	cut := map[side]int{}
	for key, on := range n.onLine {
		if n.beside[key][1] < 0 {
			continue // along an edge
		}
		for _, l := range on {
			if k := lines[l].Kind; k == FormedLine || k == IsolationLine {
				cut[key] = l
				break
			}
		}
	}
	return cut
}
