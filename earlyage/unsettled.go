package earlyage

import (
	"errors"
	"fmt"

	"slabwright/internal/march"
)

// Unsettled is returned when the heat or the water of a column found no values for a
// step. Everything else of a job can still be answered.
type Unsettled struct {
	Hours float64 // after placing, start of the step
	Step  float64 // its length, h
	Place string  // what did not settle, and where
	Err   error
}

func (e *Unsettled) Error() string {
	return fmt.Sprintf("the model through the depth of the slab did not settle %.2f h after placing, step %.3f h, in the %s; look at weather, mix and covers near that hour: %v",
		e.Hours, e.Step, e.Place, e.Err)
}

func (e *Unsettled) Unwrap() error { return e.Err }

// placed says at which hour and where a march did not settle; any other error stays.
func placed(err error, hours, dt float64, place string) error {
	var none *march.Unsettled
	if !errors.As(err, &none) {
		return err
	}
	return &Unsettled{Hours: hours, Step: dt, Place: place, Err: err}
}
