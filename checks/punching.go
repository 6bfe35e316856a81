package checks

import (
	"math"

	"slabwright/flexure"
	"slabwright/source"
	"slabwright/working"
)

// punch is a post or hard wheel about to go through the slab.
type punch struct {
	place      flexure.Position
	along      float64 // sides of the plate, mm; at an edge, along is parallel to it
	across     float64
	thickness  float64 // mm
	strength   float64 // f_c, MPa
	concrete   float64 // partial factor on the concrete, where there is one
	resistance float64 // factor φ, where there is one
}

// shear is a strength round a post and where it acts.
type shear struct {
	depth, perimeter, strength law     // mm, mm, MPa
	capacity                   law     // kN
	ratio                      float64 // β, long over short side, where the strength asks for it; 0: it does not
	cap                        *law
}

// PunchingACI returns the two-way shear strength of plain concrete, MPa, for a plate
// with sides in the ratio long over short.
//
//	strength   f'c [MPa]
//	ratio      long over short side of the plate, 1 and more [–]
//
// Source: ACI 318-19, Table 14.5.5.1, from memory.
func PunchingACI(strength, ratio float64) float64 {
	return math.Min(0.11*(1+2/ratio), 0.22) * math.Sqrt(strength)
}

// PunchingAS returns the two-way shear strength f_cv, MPa, without moment.
//
//	strength   f'c [MPa]
//	ratio      βh, long over short side of the plate [–]
//
// Source: AS 3600:2018, 9.3.3, from memory.
func PunchingAS(strength, ratio float64) float64 {
	return math.Min(0.17*(1+2/ratio), 0.34) * math.Sqrt(strength)
}

// NearPerimeter returns the length of the perimeter at half a depth from the plate,
// on which [PunchingACI] and [PunchingAS] act, with the plate flush with free sides
// at an edge and a corner. Any unit of length. Source: ACI 318-19, 22.6.4; AS
// 3600:2018, 9.3.1.1, from memory.
func NearPerimeter(position flexure.Position, along, across, depth float64) float64 {
	switch position {
	case flexure.Edge:
		return along + 2*across + 2*depth
	case flexure.Corner:
		return along + across + depth
	}
	return 2*(along+across) + 4*depth
}

const (
	farInterior, farEdge, farCorner    = "2 · (b_1 + b_2) + 4 · π · d", "b_1 + 2 · b_2 + 2 · π · d", "b_1 + b_2 + π · d"
	nearInterior, nearEdge, nearCorner = "2 · (b_1 + b_2) + 4 · d", "b_1 + 2 · b_2 + 2 · d", "b_1 + b_2 + d"
)

func perimeterFormula(position flexure.Position, interior, edge, corner string) string {
	switch position {
	case flexure.Edge:
		return edge
	case flexure.Corner:
		return corner
	}
	return interior
}

func punchingTR34(p punch) shear {
	cite := source.Cite("tr34", "punching")
	d := 0.75 * p.thickness
	u := flexure.PunchingPerimeter(p.place, p.along, p.across, d)
	v := flexure.PunchingStrength(p.strength, d)
	face := flexure.FaceShearCap(p.strength, p.strength/p.concrete)
	round := faceLength(p)
	return shear{
		depth:     law{"0.75 · h", d, cite, nil},
		perimeter: law{perimeterFormula(p.place, farInterior, farEdge, farCorner), u, cite, nil},
		strength:  law{"0.035 · min(2, 1 + sqrt(200 / d))^1.5 · sqrt(f_c)", v, cite, nil},
		capacity:  law{"v · u_1 · d / 1000", v * u * d / 1000, cite, nil},
		cap:       &law{perimeterFormula(p.place, "0.3 · (1 − f_c / 250) · f_c / γ_c · 2 · (b_1 + b_2) · d / 1000", "0.3 · (1 − f_c / 250) · f_c / γ_c · (b_1 + 2 · b_2) · d / 1000", "0.3 · (1 − f_c / 250) · f_c / γ_c · (b_1 + b_2) · d / 1000"), face * round * d / 1000, source.Cite("en1992", "6.4.5(3)").As(source.Memory), nil},
	}
}

func faceLength(p punch) float64 {
	switch p.place {
	case flexure.Edge:
		return p.along + 2*p.across
	case flexure.Corner:
		return p.along + p.across
	}
	return 2 * (p.along + p.across)
}

func (p punch) ratio() float64 { return math.Max(p.along, p.across) / math.Min(p.along, p.across) }

func punchingACI(p punch) shear {
	cite := source.Cite("aci318", "Table 14.5.5.1").As(source.Memory)
	d := p.thickness - 50
	u := NearPerimeter(p.place, p.along, p.across, d)
	v := PunchingACI(p.strength, p.ratio())
	return shear{
		ratio:     p.ratio(),
		depth:     law{"h − 50", d, source.Cite("aci318", "14.5.1.7, cast against soil").As(source.Memory), nil},
		perimeter: law{perimeterFormula(p.place, nearInterior, nearEdge, nearCorner), u, source.Cite("aci318", "22.6.4").As(source.Memory), nil},
		strength:  law{"min(0.11 · (1 + 2 / β), 0.22) · sqrt(f_c)", v, cite, nil},
		capacity:  law{"φ · v · u_1 · d / 1000", p.resistance * v * u * d / 1000, cite, nil},
	}
}

func punchingAS(p punch) shear {
	cite := source.Cite("as3600", "9.3.3")
	d := 0.75 * p.thickness
	u := NearPerimeter(p.place, p.along, p.across, d)
	v := PunchingAS(p.strength, p.ratio())
	return shear{
		ratio:     p.ratio(),
		depth:     law{"0.75 · h", d, source.Cite("practice", "no steel: three quarters of the depth"), nil},
		perimeter: law{perimeterFormula(p.place, nearInterior, nearEdge, nearCorner), u, source.Cite("as3600", "9.3.1.1"), nil},
		strength:  law{"min(0.17 · (1 + 2 / β), 0.34) · sqrt(f_c)", v, cite, nil},
		capacity:  law{"φ · v · u_1 · d / 1000", p.resistance * v * u * d / 1000, cite, nil},
	}
}

// punching checks a post or wheel against going through the slab, with factors.
func (w *worker) punching(l *Load, p Place, c contact) {
	s := working.Sheet{ID: "punching-" + l.ID + "-" + string(p), Title: name(l, p) + ": punching", Basis: []string{
		"No shear is left to the ground, nothing to steel; the plate stands flush with free sides at an edge and a corner."}}
	code := w.in.Code
	gamma := code.factor("load", l.Kind)
	in := punch{place: positionOf(p), along: c.along, across: c.across, thickness: w.h, strength: w.fc, concrete: 1, resistance: 1}
	var factor working.Input
	if code.Key == "EN" {
		in.concrete = code.factor("concrete", l.Kind).value
		factor = working.In("γ_c", in.concrete, "–", "partial factor on the concrete")
	} else {
		in.resistance = code.factor("shear", l.Kind).value
		factor = working.In("φ", in.resistance, "–", "factor on the resistance")
	}
	r := code.laws.punching(in)
	demand := gamma.value * c.force
	b1, b2 := derived("b_1", c.along, "mm", "side of the contact along the edge"), derived("b_2", c.across, "mm", "other side of the contact")
	d, fc := derived("d", r.depth.value, "mm", "depth that carries"), w.put("strength")
	if r.ratio > 0 {
		s.Add(working.New("β", "Long over short side of the contact", "max(b_1, b_2) / min(b_1, b_2)", r.ratio, "–", r.strength.cite, b1, b2))
	}
	s.Add(working.New("d", "Depth that carries", r.depth.formula, r.depth.value, "mm", r.depth.cite, w.put("thickness")),
		working.New("u_1", "Perimeter", r.perimeter.formula, r.perimeter.value, "mm", r.perimeter.cite, b1, b2, d),
		working.New("v", "Shear strength", r.strength.formula, r.strength.value, "MPa", r.strength.cite, fc, d, derived("β", r.ratio, "–", "long over short side")),
		w.besideCode(working.New("V_R", "Load it bears", r.capacity.formula, r.capacity.value, "kN", r.capacity.cite, factor, derived("v", r.strength.value, "MPa", "shear strength"), derived("u_1", r.perimeter.value, "mm", "perimeter"), d), l, in))
	capacity, clause := r.capacity.value, r.capacity.cite
	if r.cap != nil {
		s.Add(working.New("V_max", "Load the face of the plate bears", r.cap.formula, r.cap.value, "kN", r.cap.cite, fc, factor, b1, b2, d))
		if r.cap.value < capacity {
			capacity, clause = r.cap.value, r.cap.cite
		}
	}
	s.Add(working.New("P_d", "Load with its factor", "γ · P", demand, "kN", gamma.cite, working.In("γ", gamma.value, "–", "factor on this kind of load"), derived("P", c.force, "kN", "load on the spot")))
	w.row(Row{ID: s.ID, Group: Punching, Check: s.Title, Load: l.title(), Place: p, Demand: demand, Capacity: capacity, Unit: "kN", Clause: clause}, s)
}

// besideCode puts another code's shear beside the load borne.
func (w *worker) besideCode(line working.Line, l *Load, p punch) working.Line {
	const reason = "The codes put the perimeter at different distances and count size differently."
	if w.in.Code.Key == "EN" {
		p.resistance = factorOf("ACI", "shear", l.Kind).value
		return line.Beside("plain concrete by ACI 318, with its own factor", punchingACI(p).capacity.value, source.Cite("aci318", "Table 14.5.5.1").As(source.Memory), reason)
	}
	p.concrete = factorOf("EN", "concrete", l.Kind).value
	return line.Beside("plain concrete by TR34", punchingTR34(p).capacity.value, source.Cite("tr34", "punching"), reason)
}
