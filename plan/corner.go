package plan

import "math"

// InsideFrom is the angle of slab round a corner from which it counts as an inside
// (re-entrant) corner, degrees. A square pit makes 270, a round one cut into 16
// sides 202; a bend of the outline of a few degrees is no corner.
const InsideFrom = 200.0

// CornerReach is how near to a corner a joint or a crack must start to count as
// starting at it, metres (the aggregate and a spalled tip hide the last 100 mm).
const CornerReach = 0.15

// Corner is a corner of the slab's concrete, of its outline or of a fixture in it.
type Corner struct {
	At      Point    `json:"at"`
	Angle   float64  `json:"angle_deg"`     // of the slab round it
	Sides   [2]Point `json:"sides"`         // directions of its two sides, away from the corner
	Fixture string   `json:"fixture"`       // that it belongs to, "" for the outline alone
	Joint   string   `json:"joint"`         // nearest joint within CornerReach, "" when none
	Off     float64  `json:"joint_off_m"`   // how far that joint is
	Ends    bool     `json:"joint_starts"`  // that joint starts or stops here
	Edge    bool     `json:"of_outline"`    // a corner of the outline
	Round   bool     `json:"of_round_hole"` // one of many corners of a near-round hole
}

// InsideCorners returns the re-entrant corners of the outline, then every corner of
// a pit, drain, column or opening, where two contractions pull at one point.
func (s Slab) InsideCorners() []Corner {
	var corners []Corner
	outline := Ring(s.Outline).Anticlockwise()
	for i := range outline {
		if a := outline.AngleAt(i); a >= InsideFrom && len(outline) > 2 {
			c := cornerOf(outline, i, a)
			c.Edge = true
			c.Fixture = s.fixtureAt(c.At)
			corners = append(corners, s.withJoint(c))
		}
	}
	for _, f := range s.Fixtures {
		if !f.Opening && f.Kind != Pit && f.Kind != Drain && f.Kind != Column || !f.isRing() {
			continue
		}
		ring := cleanRing(f.Shape).Anticlockwise()
		for i, p := range ring {
			a := 360 - ring.AngleAt(i)
			if a < InsideFrom || !outline.Contains(p) || outline.Distance(p) <= SnapTolerance {
				continue
			}
			c := cornerOf(ring, i, a)
			c.Fixture = f.ID
			c.Round = len(ring) > 8
			corners = append(corners, s.withJoint(c))
		}
	}
	return corners
}

func cornerOf(r Ring, i int, angle float64) Corner {
	n := len(r)
	back, _ := r[(i+n-1)%n].Minus(r[i]).Unit()
	on, _ := r[(i+1)%n].Minus(r[i]).Unit()
	return Corner{At: r[i], Angle: angle, Sides: [2]Point{back, on}}
}

// cleanRing returns the ring without points that repeat the one before.
func cleanRing(points []Point) Ring {
	var r Ring
	for i, p := range points {
		if i == 0 || p.To(r[len(r)-1]) > SnapTolerance {
			r = append(r, p)
		}
	}
	if len(r) > 1 && r[0].To(r[len(r)-1]) <= SnapTolerance {
		r = r[:len(r)-1]
	}
	return r
}

// fixtureAt returns the fixture whose shape passes within CornerReach of p.
func (s Slab) fixtureAt(p Point) string {
	best, id := CornerReach, ""
	for _, f := range s.Fixtures {
		if _, _, d := f.line().Nearest(p); d <= best && f.Kind != Duct {
			best, id = d, f.ID
		}
	}
	return id
}

// withJoint adds the nearest joint within CornerReach of the corner.
func (s Slab) withJoint(c Corner) Corner {
	best := CornerReach
	for _, j := range s.Joints {
		path := Polyline(j.Path)
		along, _, d := path.Nearest(c.At)
		if d > best {
			continue
		}
		best = d
		c.Joint, c.Off = j.ID, d
		c.Ends = along <= CornerReach || along >= path.Length()-CornerReach
	}
	return c
}

// panelCorners returns the inside corners that are left inside one panel.
func panelCorners(p Panel, known []Corner) []Corner {
	var corners []Corner
	add := func(r Ring, hole bool) {
		for i := range r {
			a := r.AngleAt(i)
			if hole {
				a = 360 - a
			}
			if a < InsideFrom {
				continue
			}
			c := cornerOf(r, i, a)
			for _, k := range known {
				if k.At.To(c.At) <= 2*SnapTolerance {
					c.Fixture, c.Joint, c.Off, c.Ends, c.Edge, c.Round = k.Fixture, k.Joint, k.Off, k.Ends, k.Edge, k.Round
				}
			}
			corners = append(corners, c)
		}
	}
	add(p.Ring, false)
	for _, h := range p.Openings {
		add(h, true)
	}
	return corners
}

func sharpCorners(p Panel) []Corner {
	var corners []Corner
	for i := range p.Ring {
		if a := p.Ring.AngleAt(i); a < SharpBelow {
			corners = append(corners, cornerOf(p.Ring, i, a))
		}
	}
	return corners
}

// nearestCorner returns the corner nearest to p and how far it is.
func nearestCorner(corners []Corner, p Point) (Corner, float64) {
	best, at := math.Inf(1), Corner{}
	for _, c := range corners {
		if d := c.At.To(p); d < best {
			best, at = d, c
		}
	}
	return at, best
}
