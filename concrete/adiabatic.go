package concrete

// Adiabatic returns the equivalent age, h at 21.1 °C, and the temperature, °C, of
// concrete that keeps all its heat.
//
//	start          placing temperature [°C]
//	heatCapacity   density times specific heat [J/(m³ K)]
//	hours          since placing [h]
//
// Heat warms the concrete, warmth quickens the heat: dte/dt = rate(T), T = start +
// heat(α(te))/capacity, marched with the classical Runge-Kutta rule in steps of a
// fortieth of an hour.
func Adiabatic(h Hydration, start, heatCapacity, hours float64) (equivalentAge, temperature float64) {
	at := func(te float64) float64 { return start + h.HeatContent(h.Degree(te))/heatCapacity }
	rate := func(te float64) float64 { return h.AgeRate(at(te)) }
	const steps = 40 // an hour
	n := max(1, int(hours*steps+0.5))
	dt, te := hours/float64(n), 0.0
	for range n {
		k1 := rate(te)
		k2 := rate(te + dt/2*k1)
		k3 := rate(te + dt/2*k2)
		k4 := rate(te + dt*k3)
		te += dt / 6 * (k1 + 2*k2 + 2*k3 + k4)
	}
	return te, at(te)
}
