package concrete

// Conductivity returns the thermal conductivity of hardening concrete, W/(m K):
// a third higher when fresh than when all has hydrated.
//
//	ultimate   of mature concrete, about 1.6 to 2.5; high for quartzite [W/(m K)]
//	degree     of hydration [-]
//
// Source: Schindler 2002 dissertation, after Khan et al. 1998; from memory.
func Conductivity(ultimate, degree float64) float64 {
	return ultimate * (1.33 - 0.33*degree)
}

// Contents are the masses in a cubic metre of concrete that hold heat.
type Contents struct {
	Binder, Aggregate, Water float64 // kg/m³
	Density                  float64 // kg/m³ of concrete
}

// SpecificHeats are the specific heats of the parts of a mix, J/(kg K).
type SpecificHeats struct{ Cement, Aggregate, Water float64 }

// SpecificHeat returns the specific heat of hardening concrete, J/(kg K): bound
// water holds less heat than free water.
//
//	degree        of hydration [-]
//	temperature   of the concrete [°C]
//
// Source: Van Breugel 1991, Simulation of hydration; from memory.
func SpecificHeat(c Contents, s SpecificHeats, degree, temperature float64) float64 {
	fictitious := 8.4*temperature + 339
	return (c.Binder*degree*fictitious + c.Binder*(1-degree)*s.Cement + c.Aggregate*s.Aggregate + c.Water*s.Water) / c.Density
}
