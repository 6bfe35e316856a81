package mesh

// Sizing gives the longest side a triangle may have at a place.
type Sizing interface {
	At(p Point) float64
}

// Uniform is the same size everywhere.
type Uniform float64

func (u Uniform) At(Point) float64 { return float64(u) }

func (u Uniform) check() error { return checkSize("Size", float64(u)) }

// SizeFunc makes a plain function a Sizing. Values that are not positive numbers
// are taken as no limit.
type SizeFunc func(p Point) float64

func (f SizeFunc) At(p Point) float64 { return f(p) }

func checkSize(name string, value float64) error {
	if value > 0 && value < largestCoordinate {
		return nil
	}
	return refuseWhole(BadOption, "Give a positive length.", "%s is %g", name, value)
}

// Largest is the size itself.
func (u Uniform) Largest() float64 { return float64(u) }
