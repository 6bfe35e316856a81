package earlyage

import (
	"math"
	"sync"

	"slabwright/concrete"
	"slabwright/internal/march"
)

// HumidityDiffusivity returns the diffusivity of pore humidity in concrete, m2/s:
// it falls some twenty-fold as the pores empty, so the top dries fast and then
// shields what is below.
//
//	humidity   in the pores, 0 to 1
//	saturated  diffusivity at humidity 1 [m2/s]; see [SaturatedDiffusivity]
//
// Source: CEB-FIP Model Code 1990, 2.1-97 (alpha0 = 0.05, hc = 0.80, n = 15); the
// form is Bazant and Najjar 1972. From memory.
func HumidityDiffusivity(humidity, saturated float64) float64 {
	const least, middle, exponent = 0.05, 0.80, 15
	return saturated * (least + (1-least)/(1+math.Pow((1-humidity)/(1-middle), exponent)))
}

// SaturatedDiffusivity returns the diffusivity of pore humidity in saturated
// concrete, m2/s, from the characteristic strength in MPa.
//
// Source: CEB-FIP Model Code 1990, 2.1-98. From memory.
func SaturatedDiffusivity(characteristic float64) float64 {
	return 1e-9 / (characteristic / 10)
}

// DiffusivityAgeing returns how many times the diffusivity of a concrete at 28 days it
// has at an age: young paste is open and lets vapour through several times as fast,
// old paste less.
//
//	age  equivalent age at 20 °C [d]; held at half a day below it, where the paste has
//	     hardly set
//
// Source: C1(te) = C7 (0.05 + sqrt(6.3/te)), Bazant and Panula, Materials and Structures
// 11-12 (1978-79), turned to 28 days, where the Model Code's value is taken to stand. From
// memory.
func DiffusivityAgeing(age float64) float64 {
	const youngest = 0.5
	const old = 0.05 + 0.47434164902525688 // at 28 days: the root of 6.3/28
	return (0.05 + math.Sqrt(6.3/math.Max(age, youngest))) / old
}

// surfaceSkin is the thickness of concrete that resists vapour as much as the air
// at the surface does, m. Source: Bazant and Najjar 1972; from memory.
const surfaceSkin = 0.75e-3

// poreWater is the water that leaves a cubic metre as its humidity falls from 1 to
// 0, kg/m3. It turns a flow of humidity into kilograms and is chosen so that a 100 mm
// slab of w/c 0.40 in air of 50 % is down to 14.6 g/m2 a day after about 44 days, as
// measured (Suprenant and Malisch, Concrete Construction 1998; seen in an excerpt).
const poreWater = 160.0

// airSide is the drying face of the hardened slab.
type airSide struct {
	coefficient float64 // m/s
	humidity    float64
}

func (a *airSide) Into(_, h float64) (flow, slope float64) {
	return a.coefficient * (a.humidity - h), -a.coefficient
}

// porePotential is the potential of a concrete whose saturated diffusivity is 1; that
// of another stands in the conductances.
var porePotential = sync.OnceValue(func() march.Potential {
	return march.Integrated(func(h float64) float64 { return HumidityDiffusivity(h, 1) }, 0, 1, 400)
})

// moisture is the humidity in the pores through the slab, from set on.
type moisture struct {
	*march.Marcher
	face   *airSide
	skin   float64   // m/s
	mature []float64 // conductance of each interval at 28 days
	volume []float64 // by node
	given  float64   // by what is left in the pores, kg/m2 so far
}

func newMoisture(slab march.Grid, saturated float64) *moisture {
	m := &moisture{face: &airSide{}, skin: saturated / surfaceSkin}
	p := march.Layered(slab, march.Layer{To: slab[len(slab)-1], Conductivity: 1, Capacity: 1})
	p.Top = m.face
	p.Potential = porePotential()
	for i := range p.Conductance {
		p.Conductance[i] *= saturated
	}
	m.mature, m.volume = append([]float64(nil), p.Conductance...), slab.Volumes()
	start := make([]float64, len(slab))
	for i := range start {
		start[i] = 1
	}
	m.Marcher = march.New(p, 0, start)
	m.Tolerance = 1e-5 // humidity; what is left after it is its square
	return m
}

// step dries the slab for dt seconds under a cover in air of a humidity, and
// returns the water that left, kg/m2.
func (m *moisture) step(dt float64, c Cover, humidity float64) (loss float64, err error) {
	m.face.humidity, m.face.coefficient = humidity, m.skin*c.Evaporation
	if c.KeptWet {
		m.face.humidity, m.face.coefficient = 1, m.skin
	}
	entered := m.Entered()
	m.given += poreWater * m.held()
	if err := m.Step(dt); err != nil {
		return 0, err
	}
	m.given -= poreWater * m.held()
	return (entered - m.Entered()) * poreWater, nil
}

// held is what the nodes hold at their present capacities, in units of poreWater.
func (m *moisture) held() (sum float64) {
	for i, h := range m.Value {
		sum += m.Capacity[i] * h
	}
	return sum
}

// loosen brings the capacity of each node to its degree of hydration: that of mature
// concrete times what a paste of this degree gives up over one fully hydrated, at
// the humidity that the middle of a step of dt seconds will have.
func (m *moisture) loosen(h *concrete.Hydration, degree []float64, dt float64) {
	water := h.WaterBinder * h.Binder
	for i, v := range m.volume {
		humidity := math.Min(math.Max(m.Ahead(i, dt/2), 0), 1)
		ripe := WaterCapacity(humidity, h.Ultimate, h.Ultimate, water, h.Binder)
		m.Capacity[i] = v * WaterCapacity(humidity, math.Min(degree[i], h.Ultimate), h.Ultimate, water, h.Binder) / ripe
	}
}

// ripen brings the diffusivity to the age of the concrete of each node, d at 20 °C.
func (m *moisture) ripen(age func(node int) float64) {
	above := age(0)
	for i, mature := range m.mature {
		below := age(i + 1)
		m.Conductance[i] = mature * DiffusivityAgeing((above+below)/2)
		above = below
	}
}

// canGive returns what the pores would give to open air of this humidity now,
// kg/m2/h.
func (m *moisture) canGive(humidity float64) float64 {
	return math.Max(0, m.skin*(m.Value[0]-humidity)*poreWater*3600)
}
