package checks

import (
	"fmt"
	"math"
	"strings"

	"slabwright/flexure"
	"slabwright/source"
	"slabwright/working"
)

// contact is what of a load stands on one spot, and its neighbours.
type contact struct {
	force      float64 // kN
	radius     float64 // of the circle with its area, mm
	along      float64 // sides of the plate or of the square of equal area, mm
	across     float64
	neighbours []neighbour
}

// neighbour is another contact of the same load.
type neighbour struct {
	force    float64 // kN
	distance float64 // mm
	sideways bool    // square to the direction of the others
	what     string
}

// closePair is the distance, in slab thicknesses, up to which two contacts count as
// one with the area between them. Source: Concrete Society TR34, from memory.
const closePair = 2

// contactOf returns the contact of a wheel, axle or post with the lines that find
// it. Force is what stands on the spot.
func (w *worker) contactOf(l *Load) (contact, []working.Line) {
	switch l.Kind {
	case Axle:
		return w.axleContact(l)
	case Post:
		return w.postContact(l)
	}
	p := w.val(of(l, "force"))
	a := math.Sqrt(1000 * p / (math.Pi * w.val(of(l, "pressure"))))
	line := working.New("a", "Radius of the contact", "sqrt(1000 · P / (π · p_t))", a, "mm", source.Cite("practice", "circle with the area of the contact"), w.put(of(l, "force")), w.put(of(l, "pressure")))
	return squared(contact{force: p, radius: a}), []working.Line{line}
}

// squared gives a round contact the sides of the square of equal area.
func squared(c contact) contact {
	c.along = c.radius * math.Sqrt(math.Pi)
	c.across = c.along
	return c
}

func (w *worker) axleContact(l *Load) (contact, []working.Line) {
	circle, axle := source.Cite("practice", "circle with the area of the contact"), w.val(of(l, "force"))
	wheels, track := float64(l.Wheels), w.val(of(l, "track"))
	count := working.In("n_w", wheels, "–", "wheels on the axle")
	one := math.Sqrt(1000 * axle / (wheels * math.Pi * w.val(of(l, "pressure"))))
	lines := []working.Line{
		working.New("P_1", "Load on one wheel", "P / n_w", axle/wheels, "kN", source.Cite("mechanics", "even axle"), w.put(of(l, "force")), count),
		working.New("a_1", "Radius of the contact of one wheel", "sqrt(1000 · P_1 / (π · p_t))", one, "mm", circle, derived("P_1", axle/wheels, "kN", "load on one wheel"), w.put(of(l, "pressure"))),
	}
	if l.Wheels == 2 {
		return squared(contact{force: axle / 2, radius: one, neighbours: []neighbour{{axle / 2, track, false, "the other wheel"}}}), lines
	}
	pair := w.val(of(l, "pair"))
	if pair > closePair*w.h {
		return squared(contact{force: axle / 4, radius: one, neighbours: []neighbour{{axle / 4, pair, false, "its twin"},
			{axle / 4, track - pair, false, "inner wheel across the axle"}, {axle / 4, track, false, "outer wheel across the axle"}}}), lines
	}
	merged, line := mergedRadius(one, w.put(of(l, "pair")))
	lines = append(lines, line,
		working.New("P_2", "Load on the pair", "2 · P_1", axle/2, "kN", source.Cite("mechanics", ""), derived("P_1", axle/4, "kN", "load on one wheel")))
	return squared(contact{force: axle / 2, radius: merged, neighbours: []neighbour{{axle / 2, track, false, "the other pair"}}}), lines
}

// mergedRadius is the radius of two contacts taken as one with the area between
// them.
func mergedRadius(one float64, apart working.Input) (float64, working.Line) {
	a := math.Sqrt(one*one + 2*one*apart.Value/math.Pi)
	return a, working.New("a", "Radius of both contacts with the area between, closer than 2 h", "sqrt((π · a_1² + 2 · a_1 · "+apart.Symbol+") / π)", a, "mm",
		source.Cite("tr34", "contacts closer than twice the thickness"), derived("a_1", one, "mm", "radius of one contact"), apart)
}

func (w *worker) postContact(l *Load) (contact, []working.Line) {
	p, b1, b2 := w.val(of(l, "force")), w.val(of(l, "plate_x")), w.val(of(l, "plate_y"))
	one := flexure.EqualAreaRadius(b1 * b2)
	c := contact{force: p, radius: one, along: b1, across: b2}
	lines := []working.Line{working.New("a_1", "Radius of the circle with the area of the base plate", "sqrt(b_1 · b_2 / π)", one, "mm",
		source.Cite("practice", "circle with the area of the contact"), w.put(of(l, "plate_x")), w.put(of(l, "plate_y")))}
	legs := 1.0
	if l.Back != nil {
		back := w.val(of(l, "back"))
		if back <= closePair*w.h {
			merged, line := mergedRadius(one, w.put(of(l, "back")))
			c, legs = contact{force: 2 * p, radius: merged, along: b1, across: b2 + back}, 2
			lines = append(lines, line, working.New("P_2", "Load of both posts", "2 · P", 2*p, "kN", source.Cite("mechanics", ""), w.put(of(l, "force"))))
		} else {
			c.neighbours = append(c.neighbours, neighbour{p, back, false, "the post behind"})
		}
	}
	if l.Pitch != nil {
		for _, side := range []string{"the next post", "the next post the other way"} {
			c.neighbours = append(c.neighbours, neighbour{legs * p, w.val(of(l, "pitch")), true, side})
		}
	}
	return c, lines
}

// addedStress is what the neighbours of a contact add to the stress under it, in the
// worse of two directions; what would ease it is left out, since the neighbour may
// be empty. The lines say how.
func (w *worker) addedStress(c contact) (float64, []working.Line) {
	var sum [2]float64
	for _, n := range c.neighbours {
		for d := range sum {
			sum[d] += 6000 * n.force * math.Max(w.moment(n, d).value, 0) / sq(w.h)
		}
	}
	worse := 0
	if sum[1] > sum[0] {
		worse = 1
	}
	if sum[worse] == 0 {
		return 0, nil
	}
	return sum[worse], w.neighbourLines(c, worse, sum[worse])
}

// moment is the moment per load that a neighbour makes in a direction: 0 along the
// line of contacts, 1 square to it.
func (w *worker) moment(n neighbour, direction int) law {
	x := n.distance / w.l
	along, across := flexure.NeighbourMoments(x, w.nu)
	if n.sideways == (direction == 1) {
		return law{"(ker − (1 − ν) · kei' / z) / (2 · π)", along, source.Cite("timoshenko", "elastic foundation, point load"), nil}
	}
	return law{"(ν · ker + (1 − ν) · kei' / z) / (2 · π)", across, source.Cite("timoshenko", "elastic foundation, point load"), nil}
}

// neighbourLines prints the neighbours that add in a direction.
func (w *worker) neighbourLines(c contact, direction int, sum float64) []working.Line {
	var lines []working.Line
	var terms []string
	inputs := []working.Input{w.put("thickness")}
	for i := 0; i < len(c.neighbours); i++ {
		n, count := c.neighbours[i], 1
		for i+1 < len(c.neighbours) && c.neighbours[i+1].distance == n.distance && c.neighbours[i+1].sideways == n.sideways {
			i, count = i+1, count+1
		}
		m := w.moment(n, direction)
		if m.value <= 0 {
			continue
		}
		x, at := n.distance/w.l, len(terms)+1
		ker, slope := flexure.KelvinNear(x)
		figure := working.Figure(x, 4)
		lines = append(lines,
			working.New("z", sentence(n.what)+": distance over l", "r / l", x, "–", m.cite, derived("r", n.distance, "mm", "distance of "+n.what), w.lIn()),
			working.New(fmt.Sprintf("m_%d", at), "Its moment per load in the worse direction", m.formula, m.value, "–", m.cite, w.put("poisson"),
				working.In("ker", ker, "–", "Kelvin function ker("+figure+"), from tables"), working.In("kei'", slope, "–", "Kelvin function kei′("+figure+"), from tables"),
				derived("z", x, "–", "distance over l")))
		term := fmt.Sprintf("P_%d · m_%d", at, at)
		if count > 1 {
			term = fmt.Sprintf("%d · %s", count, term)
		}
		terms = append(terms, term)
		inputs = append(inputs, derived(fmt.Sprintf("P_%d", at), n.force, "kN", n.what), derived(fmt.Sprintf("m_%d", at), m.value, "–", "moment per load"))
	}
	return append(lines, working.New("Δσ", "Added by the neighbours; those that would ease it are left out", "6000 · ("+strings.Join(terms, " + ")+") / h²", sum, "MPa",
		source.Cite("mechanics", "section modulus"), inputs...))
}

func sentence(s string) string { return strings.ToUpper(s[:1]) + s[1:] }
