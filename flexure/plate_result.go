package flexure

import (
	"math"
	"slices"
	"sync"

	"slabwright/internal/fem"
	"slabwright/plan"
)

// Bent is a slab in balance: how it lies, how it is stressed, what the ground and the
// joints carry. Deflections are positive down from the level at which the slab
// without weight would just touch the ground.
type Bent struct {
	Plate    Plate       `json:"-"`
	Theory   Theory      `json:"theory"`
	Unknowns int         `json:"unknowns"`
	Elements int         `json:"elements"`
	Rounds   int         `json:"rounds"`    // of contact
	Stiff    float64     `json:"radius_m"`  // l, radius of relative stiffness
	Deepest  Peak        `json:"deepest"`   // greatest deflection, m
	Highest  Peak        `json:"highest"`   // least deflection, m: a lift if negative
	Bottom   Peak        `json:"bottom"`    // greatest tension underneath, Pa
	Top      Peak        `json:"top"`       // greatest tension on top, Pa
	Pressure Peak        `json:"pressure"`  // greatest pressure on the ground, Pa
	Contact  float64     `json:"contact"`   // share of the supported area that touches the ground
	Weight   float64     `json:"weight_n"`  // of the slab
	Applied  float64     `json:"applied_n"` // loads together
	Reaction float64     `json:"reaction_n"`
	Joints   []JointBent `json:"joints,omitempty"`
	Under    []UnderLoad `json:"under,omitempty"` // one for each load, in their order

	frame   *frame
	u, dead []float64
	moment  moments // of all that acts
	still   moments // of weight and warp
	closer  []*closeUp
	once    sync.Once
	find    *fem.Locator
}

// Peak is a greatest value and where it is.
type Peak struct {
	Value float64    `json:"value"`
	At    plan.Point `json:"at"`
	Way   float64    `json:"way_deg"` // in which a stress pulls, anticlockwise from x
}

// Here is the slab at one place.
type Here struct {
	Deflection float64    `json:"deflection_m"`
	ByLoads    float64    `json:"by_loads_m"` // part of it that the loads add to weight and warp
	Added      [3]float64 `json:"added_n"`    // moment that the loads add to weight and warp
	Moment     [3]float64 `json:"moment_n"`   // xx, yy, xy per length; positive for tension underneath
	Bottom     float64    `json:"bottom_pa"`  // greatest tension underneath, Pa
	Top        float64    `json:"top_pa"`     // greatest tension on top, Pa
	BottomWay  float64    `json:"bottom_deg"` // in which it pulls
	TopWay     float64    `json:"top_deg"`
	Pressure   float64    `json:"pressure_pa"` // on the ground; 0 where the slab is clear of it
}

// UnderLoad is the slab right below the middle of a load.
type UnderLoad struct {
	Load string `json:"load"`
	Here
}

// bent makes the result of a state.
func (r *Ready) bent(loads []Load, u []float64, c *contact, rounds int) *Bent {
	f := r.frame
	p := f.plate
	p.Loads = loads
	b := &Bent{Plate: p, Theory: p.theory(), Unknowns: len(u), Elements: f.net.mesh.Elements(), Rounds: rounds, Stiff: p.stiffness(), frame: f, u: u, dead: r.dead}
	if r.still == nil {
		r.still = f.nodeMoments(r.dead, p.freeCurvature())
	}
	b.still, b.moment = r.still, r.still
	if len(loads) > 0 {
		b.moment = f.nodeMoments(u, p.freeCurvature())
	}
	b.ground(c)
	for _, l := range loads {
		b.Applied += l.Force
		here, _ := b.At(l.middle())
		b.Under = append(b.Under, UnderLoad{l.ID, here})
	}
	b.peaks()
	b.joints()
	return b
}

// ground adds up what the ground carries.
func (b *Bent) ground(c *contact) {
	bed := b.frame.bed
	w := make([]float64, len(bed.stiff))
	bed.deflections(b.u, w)
	touching, supported := 0.0, 0.0
	for i, s := range bed.stiff {
		b.Weight += bed.area[i] * b.Plate.weight()
		if s == 0 {
			continue
		}
		supported += bed.area[i]
		if !c.pushes[i] {
			continue
		}
		touching += bed.area[i]
		b.Reaction += s * w[i]
		if pressure := s * w[i] / bed.area[i]; pressure > b.Pressure.Value {
			x, y := bed.place(i/bed.points, i%bed.points)
			b.Pressure = Peak{Value: pressure, At: plan.Point{X: x, Y: y}}
		}
	}
	if supported > 0 {
		b.Contact = touching / supported
	}
}

// peaks looks at all nodes, and below all loads, for the greatest of everything.
func (b *Bent) peaks() {
	unknowns := b.frame.net.kind.Unknowns
	sharp := b.Plate.sharpPlaces()
	b.Deepest.Value, b.Highest.Value = math.Inf(-1), math.Inf(1)
	b.Bottom.Value, b.Top.Value = math.Inf(-1), math.Inf(-1)
	see := func(at plan.Point, h Here) {
		higher(&b.Deepest, h.Deflection, at, 0)
		if h.Deflection < b.Highest.Value {
			b.Highest = Peak{Value: h.Deflection, At: at}
		}
		for _, s := range sharp {
			if s.To(at) < b.Plate.Thickness {
				return
			}
		}
		higher(&b.Bottom, h.Bottom, at, h.BottomWay)
		higher(&b.Top, h.Top, at, h.TopWay)
	}
	nodes := func(b *Bent, skip func(plan.Point) bool) {
		for n := range b.moment {
			at := b.frame.net.at(int32(n))
			if skip(at) {
				continue
			}
			h := Here{Deflection: b.u[n*unknowns]}
			h.Bottom, h.Top, h.BottomWay, h.TopWay = b.Plate.allStress(b.moment[n])
			see(at, h)
		}
	}
	nodes(b, func(at plan.Point) bool {
		return slices.ContainsFunc(b.closer, func(c *closeUp) bool { return c.covers(at) })
	})
	for _, c := range b.closer {
		nodes(c.Bent, func(at plan.Point) bool { return !c.covers(at) })
	}
	for i, under := range b.Under {
		see(b.Plate.Loads[i].middle(), under.Here)
	}
}

func higher(p *Peak, value float64, at plan.Point, way float64) {
	if value > p.Value {
		*p = Peak{Value: value, At: at, Way: way}
	}
}

// sharpPlaces lists inside corners and corners of openings. Within a thickness of them
// bending theory gives stress without limit, so peaks leave them out.
func (p Plate) sharpPlaces() (places []plan.Point) {
	ring := plan.Ring(p.Slab.Outline).Anticlockwise()
	for i, q := range ring {
		if plan.Turn(ring[(i+len(ring)-1)%len(ring)], q, ring[(i+1)%len(ring)]) < 0 {
			places = append(places, q)
		}
	}
	for _, h := range p.openings() {
		places = append(places, h...)
	}
	return places
}

// At returns the slab at a place; ok is false off the slab. On a joint it is the mean
// of both sides: see [JointBent] for each.
func (b *Bent) At(at plan.Point) (here Here, ok bool) {
	for _, c := range b.closer {
		if c.covers(at) {
			return c.At(at)
		}
	}
	b.once.Do(func() { b.find = fem.NewLocator(b.frame.net.mesh) })
	p := b.Plate
	w, m, touching := b.whole().At(b.find, at.X, at.Y, b.u)
	if touching == 0 {
		return Here{}, false
	}
	before, still, _ := b.whole().At(b.find, at.X, at.Y, b.dead)
	here = Here{Deflection: w, ByLoads: w - before, Moment: [3]float64{m.XX, m.YY, m.XY}, Pressure: p.supportAt(at.X, at.Y) * math.Max(w, 0),
		Added: [3]float64{m.XX - still.XX, m.YY - still.YY, m.XY - still.XY}}
	if b.frame.net.kind.Thick {
		here.Moment, here.Added = b.between(at)
	}
	here.Bottom, here.Top, here.BottomWay, here.TopWay = p.allStress(here.Moment)
	return here, true
}

// whole is the plate as its elements see it.
func (b *Bent) whole() *fem.Plate {
	p := b.Plate
	bending, shear := fem.IsotropicPlate(p.Modulus, p.Poisson, p.Thickness)
	free := p.freeCurvature()
	layer := fem.PlateLayer{Bending: bending, Shear: shear, FreeCurvature: [3]float64{free, free, 0}}
	return &fem.Plate{Mesh: b.frame.net.mesh, Kind: b.frame.net.kind, Law: func(fem.Place) fem.PlateLayer { return layer }}
}

// between takes moments at a place from those at the nodes around it. Within a thick
// element moments are flat one way, so this is nearer the truth.
func (b *Bent) between(at plan.Point) (all, added [3]float64) {
	hits := b.find.Find(at.X, at.Y)
	for _, hit := range hits {
		weights := [4]float64{1 - hit.Xi - hit.Eta, hit.Xi, hit.Eta}
		of := b.frame.net.mesh.Of(hit.Element)
		if len(of) == 4 {
			for i, c := range squareCorners {
				weights[i] = (1 + c[0]*hit.Xi) * (1 + c[1]*hit.Eta) / 4
			}
		}
		for i, n := range of {
			for k := range all {
				share := weights[i] / float64(len(hits))
				all[k] += share * b.moment[n][k]
				added[k] += share * (b.moment[n][k] - b.still[n][k])
			}
		}
	}
	return all, added
}

// Area returns what [Plate] covers, m².
func (b *Bent) Area() float64 { return b.Plate.area() }
