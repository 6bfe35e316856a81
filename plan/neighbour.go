package plan

// PanelAt returns the panel that holds p, or nil. On a joint it is the first of
// the two.
func PanelAt(panels []Panel, p Point) *Panel {
	for i := range panels {
		if panels[i].holds(p) {
			return &panels[i]
		}
	}
	return nil
}

// PanelByID returns the panel of that number, or nil.
func PanelByID(panels []Panel, id string) *Panel {
	for i := range panels {
		if panels[i].ID == id {
			return &panels[i]
		}
	}
	return nil
}

// Joints returns the ids of the joints on the panel's sides, in the order of the
// sides, each once.
func (p Panel) Joints() []string {
	var ids []string
	for _, s := range p.Sides {
		if s.Joint != "" && !contains(ids, s.Joint) {
			ids = append(ids, s.Joint)
		}
	}
	return ids
}

// Neighbours returns the ids of the panels that share a length of side with one
// panel, in the order of the list.
func Neighbours(panels []Panel, id string) []string {
	p := PanelByID(panels, id)
	if p == nil {
		return nil
	}
	var ids []string
	for _, o := range panels {
		if o.ID != id && p.shared(o) > JointReach {
			ids = append(ids, o.ID)
		}
	}
	return ids
}

// shared returns the length of side common to two panels.
func (p Panel) shared(o Panel) float64 {
	var sum float64
	for _, a := range p.Sides {
		for _, b := range o.Sides {
			sum += a.Segment().Overlap(b.Segment(), 2*SnapTolerance)
		}
	}
	for _, h := range o.Openings { // a panel inside another, parted by a ring of joint
		for _, a := range p.Sides {
			for _, b := range h.Sides() {
				sum += a.Segment().Overlap(b, 2*SnapTolerance)
			}
		}
	}
	for _, h := range p.Openings {
		for _, a := range h.Sides() {
			for _, b := range o.Sides {
				sum += a.Overlap(b.Segment(), 2*SnapTolerance)
			}
		}
	}
	return sum
}

// WithoutClosedJoints returns the slab with only those joints that may open: the
// ones seen closed below their groove are left out. Its panels are the pieces that
// move as one, whose length and proportions count for shrinkage.
func (s Slab) WithoutClosedJoints() Slab {
	open := s
	open.Joints = nil
	for _, j := range s.Joints {
		if !j.Opened.Is("no") {
			open.Joints = append(open.Joints, j)
		}
	}
	return open
}
