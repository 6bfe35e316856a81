package earlyage

import "math"

// strain adds the free strains of the step and lets the stresses creep.
func (r *run) strain(hours, dt float64) {
	c := &r.Concrete
	final := r.setTo
	for i, age := range r.heat.Hidden {
		now := r.table.at(age / 3600)
		r.modulus[i] = (r.now[i].Modulus + now.Modulus) / 2
		r.now[i] = now
		r.change[i] = 0
		if age/3600 <= final {
			continue
		}
		h := r.water.Value[i]
		drying := c.DryToZero * (1 - h*h*h)
		r.change[i] = c.Expansion*(r.heat.Value[i]-r.before[i]) - (now.autogenous - r.autogenous[i]) - (drying - r.drying[i])
		r.autogenous[i], r.drying[i] = now.autogenous, drying
		r.free[i] += r.change[i]
	}
	r.craze(hours)
	r.section.split(r.change, r.modulus)
	r.mean += r.section.mean
	r.slope += r.section.slope
	r.relax(dt)
}

// craze takes out of the section, for one step, the layers whose tension has come
// to their strength and that go on shrinking: they craze and pull no harder.
func (r *run) craze(hours float64) {
	for i := range r.self {
		if r.modulus[i] > 0 && r.self[i].stress >= r.now[i].Tensile && r.change[i] < 0 {
			r.modulus[i] = 0
			if math.IsNaN(r.crazed) && r.now[i].Tensile > leastTension {
				r.crazed = hours
			}
		}
	}
}

// relax gives the parts of the step's strain to the fibres that hold them.
func (r *run) relax(dt float64) {
	c := &r.Concrete
	r.fade.set(c.Creep, dt/24)
	plane := 1 / (1 - c.Poisson)
	for i := range r.self {
		strain, modulus := -plane*r.section.rest[i], r.modulus[i]
		if modulus <= 0 { // crazing: it only creeps
			strain, modulus = 0, r.now[i].Modulus
		}
		if modulus <= 0 {
			continue
		}
		r.self[i].take(strain, c.Creep, &r.fade, modulus, r.now[i].compliance)
	}
	if r.section.whole <= 0 {
		return
	}
	compliance := r.now[r.middle].compliance
	r.axial.take(-r.section.mean, c.Creep, &r.fade, r.section.whole, compliance)
	r.curl.take(-plane*r.section.slope*r.Thickness/2, c.Creep, &r.fade, r.section.whole, compliance)
}
