package climate

import (
	"errors"
	"fmt"
	"math"
	"time"

	"slabwright/plan"
)

// Surroundings are everything beside and over a slab that stands between it and sun,
// sky and wind.
type Surroundings struct {
	Obstacles []Obstacle
	Bearing   float64  // of the plan's +y axis, clockwise from true north, degrees
	WindFrom  *float64 // bearing the wind comes from, clockwise from north; nil: not known, every bearing counts alike
}

// Check returns everything that cannot be right about the surroundings.
func (s Surroundings) Check() error {
	var errs []error
	for _, o := range s.Obstacles {
		errs = append(errs, o.Check())
	}
	if !(s.Bearing >= -360 && s.Bearing <= 360) {
		errs = append(errs, fmt.Errorf("bearing of the plan %g is outside -360 to 360 degrees", s.Bearing))
	}
	if s.WindFrom != nil && !(*s.WindFrom >= 0 && *s.WindFrom <= 360) {
		errs = append(errs, fmt.Errorf("bearing of the wind %g is outside 0 to 360 degrees: north is 0, east 90", *s.WindFrom))
	}
	return errors.Join(errs...)
}

// toward returns the direction on the plan of a bearing clockwise from north.
func (s Surroundings) toward(bearing float64) plan.Point {
	return plan.Direction(90 - bearing + s.Bearing)
}

// SunAt returns the share of the direct sun that comes to a point of the slab when
// the sun stands at a zenith and azimuth (see [SunPosition]); 0 when it is down.
func (s Surroundings) SunAt(p plan.Point, zenith, azimuth float64) float64 {
	if zenith >= 90 {
		return 0
	}
	share, toward := 1.0, s.toward(azimuth)
	for _, o := range s.Obstacles {
		if o.hides(p, zenith, toward) {
			share *= o.Through
		}
	}
	return share
}

// SunOn returns the share of the direct sun on an area, the mean of [Surroundings.SunAt]
// over points spread evenly in it: a shadow's edge is met within about 3 % of the
// width of the area.
func (s Surroundings) SunOn(area plan.Ring, zenith, azimuth float64) float64 {
	return meanOver(area, func(p plan.Point) float64 { return s.SunAt(p, zenith, azimuth) })
}

// SkyOn returns the share of the sky in view of an area.
func (s Surroundings) SkyOn(area plan.Ring) float64 {
	return meanOver(area, func(p plan.Point) float64 { return SkyView(p, s.Obstacles) })
}

// WindOn returns the share of the open wind felt on an area.
func (s Surroundings) WindOn(area plan.Ring) float64 {
	return meanOver(area, func(p plan.Point) float64 {
		if s.WindFrom == nil {
			return s.windAnyway(p)
		}
		return s.WindAt(p, *s.WindFrom)
	})
}

// pointsAcross is the number of points along the longer side of an area's box.
const pointsAcross = 16

// meanOver is the mean of a value over points spread evenly in an area; of an area
// so thin that none falls in it, the value at its centre.
func meanOver(area plan.Ring, of func(plan.Point) float64) float64 {
	if len(area) == 0 {
		panic("climate: the shade of an area without points")
	}
	low, high := area.Box()
	size := math.Max(high.X-low.X, high.Y-low.Y) / pointsAcross
	across, up := steps(high.X-low.X, size), steps(high.Y-low.Y, size)
	sum, n := 0.0, 0
	for i := range across {
		for j := range up {
			p := plan.Point{X: low.X + (high.X-low.X)*(float64(i)+0.5)/float64(across), Y: low.Y + (high.Y-low.Y)*(float64(j)+0.5)/float64(up)}
			if area.Contains(p) {
				sum, n = sum+of(p), n+1
			}
		}
	}
	if n == 0 {
		return of(area.Centroid())
	}
	return sum / float64(n)
}

func steps(length, size float64) int {
	if size <= 0 {
		return 1
	}
	return max(1, int(math.Ceil(length/size-1e-9)))
}

// ShadeHour is what an area of the slab gets of sun, sky and wind over an hour.
type ShadeHour struct {
	From, To        time.Time
	Zenith, Azimuth float64 // of the sun in the middle of the hour, degrees
	Sun             float64 // share of the direct sun, 0 while it is down
	Sky, Wind       float64 // share of the sky in view, of the wind felt
}

// Hours returns what an area gets hour by hour from one instant to another. The sun
// of an hour is the mean over six places of it.
func (s Surroundings) Hours(place Place, area plan.Ring, from, to time.Time) ([]ShadeHour, error) {
	if err := errors.Join(s.Check(), place.Check()); err != nil {
		return nil, err
	}
	if len(area) < 3 {
		return nil, fmt.Errorf("the area in the shade has %d points: give three or more", len(area))
	}
	if !to.After(from) {
		return nil, fmt.Errorf("shade from %s to %s: the end is not after the start", stamp(from), stamp(to))
	}
	if err := s.standsOn(area); err != nil {
		return nil, err
	}
	sky, wind := s.SkyOn(area), s.WindOn(area)
	var out []ShadeHour
	for at := from; at.Before(to); at = at.Add(time.Hour) {
		h := ShadeHour{From: at, To: at.Add(time.Hour), Sky: sky, Wind: wind}
		if h.To.After(to) {
			h.To = to
		}
		h.Zenith, h.Azimuth = SunPosition(at.Add(h.To.Sub(at)/2), place.Latitude, place.Longitude)
		h.Sun = s.sunOver(place, area, h.From, h.To)
		out = append(out, h)
	}
	return out, nil
}

// standsOn returns an error where an obstacle that stands on the ground covers a part
// of the area itself: most often a roof whose clear height was left out.
func (s Surroundings) standsOn(area plan.Ring) error {
	const touching = 0.05 // a wall drawn a little over the edge of the slab
	var errs []error
	for _, o := range s.Obstacles {
		if o.Under > 0 {
			continue
		}
		share := meanOver(area, func(p plan.Point) float64 {
			if o.Outline.Contains(p) {
				return 1
			}
			return 0
		})
		if share > touching {
			errs = append(errs, fmt.Errorf("obstacle %q stands on %.0f %% of the area: a roof needs its clear height, a building must not overlap the slab", o.Name, 100*share))
		}
	}
	return errors.Join(errs...)
}

// sunOver is the share of the direct sun over a span, each part by the sun it would
// have had on level open ground.
func (s Surroundings) sunOver(place Place, area plan.Ring, from, to time.Time) float64 {
	const parts = 6
	var got, could float64
	for i := range parts {
		at := from.Add(to.Sub(from) * time.Duration(2*i+1) / (2 * parts))
		zenith, azimuth := SunPosition(at, place.Latitude, place.Longitude)
		if zenith >= 90 {
			continue
		}
		weight := math.Cos(radians(zenith))
		got, could = got+weight*s.SunOn(area, zenith, azimuth), could+weight
	}
	if could == 0 {
		return 0
	}
	return got / could
}

// Shelters returns the surroundings as shelters for [Exposure], an hour each.
func (s Surroundings) Shelters(place Place, area plan.Ring, from, to time.Time) ([]Shelter, error) {
	hours, err := s.Hours(place, area, from, to)
	if err != nil {
		return nil, err
	}
	out := make([]Shelter, 0, len(hours))
	for _, h := range hours {
		out = append(out, Shelter{From: h.From, To: h.To, Beam: h.Sun, Sky: h.Sky, Wind: h.Wind, Note: "what stands around the slab"})
	}
	return out, nil
}
