package plan

import (
	"encoding/json"
	"fmt"
	"math"
)

// Point is a place in local axes, metres. In a job file it is [x, y].
type Point struct{ X, Y float64 }

// MarshalJSON writes the point as [x, y].
func (p Point) MarshalJSON() ([]byte, error) { return json.Marshal([2]float64{p.X, p.Y}) }

// UnmarshalJSON reads [x, y].
func (p *Point) UnmarshalJSON(data []byte) error {
	var xy []float64
	if err := json.Unmarshal(data, &xy); err != nil {
		return fmt.Errorf("a point is [x, y] in metres: %w", err)
	}
	if len(xy) != 2 {
		return fmt.Errorf("a point is [x, y] in metres, this has %d numbers", len(xy))
	}
	p.X, p.Y = xy[0], xy[1]
	return nil
}

// To returns the distance to another point.
func (p Point) To(q Point) float64 { return math.Hypot(q.X-p.X, q.Y-p.Y) }
