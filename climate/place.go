package climate

import "fmt"

// Place is where the slab lies.
type Place struct {
	Latitude  float64 `json:"latitude"`   // degrees, north positive
	Longitude float64 `json:"longitude"`  // degrees, east positive
	Altitude  float64 `json:"altitude_m"` // above sea level
}

// Check returns an error that names what cannot be on the globe.
func (p Place) Check() error {
	switch {
	case !(p.Latitude >= -90 && p.Latitude <= 90):
		return fmt.Errorf("latitude %g is outside -90 to 90 degrees; are latitude and longitude swapped?", p.Latitude)
	case !(p.Longitude >= -180 && p.Longitude <= 180):
		return fmt.Errorf("longitude %g is outside -180 to 180 degrees", p.Longitude)
	case !(p.Altitude >= -500 && p.Altitude <= 6000):
		return fmt.Errorf("altitude %g m is outside -500 to 6000 m", p.Altitude)
	}
	return nil
}
