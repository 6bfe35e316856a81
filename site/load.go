package site

import "slabwright/source"

// Load is one thing that stands or drives on the slab in use, without factors.
type Load struct {
	ID       string       `json:"id"`
	Name     string       `json:"name,omitempty"`
	Kind     string       `json:"kind"`                   // wheel, axle, post, line, spread
	Force    *source.Fact `json:"load_kN,omitempty"`      // on the wheel, the whole axle, the post
	PerMetre *source.Fact `json:"load_kN_m,omitempty"`    // of a line load
	PerArea  *source.Fact `json:"load_kN_m2,omitempty"`   // of goods spread either side of an aisle
	Pressure *source.Fact `json:"pressure_MPa,omitempty"` // of a tyre on the slab
	Wheels   int          `json:"wheels,omitempty"`       // on the axle, 2 or 4
	Track    *source.Fact `json:"track_m,omitempty"`      // middle to middle across the axle
	Pair     *source.Fact `json:"pair_m,omitempty"`       // middle to middle of the two wheels of a pair
	PlateX   *source.Fact `json:"plate_x_m,omitempty"`    // sides of the base plate; x along the edge
	PlateY   *source.Fact `json:"plate_y_m,omitempty"`
	Pitch    *source.Fact `json:"pitch_m,omitempty"` // to the next post of the rack
	Back     *source.Fact `json:"back_m,omitempty"`  // to the post of the rack behind
	At       []string     `json:"at,omitempty"`      // interior, joint, edge, corner; absent: everywhere it may stand
	Passes   *source.Fact `json:"passes,omitempty"`  // over the life at the worst place
}

// Use is what the slab is for and what it has to stand besides loads.
type Use struct {
	Class     *source.Choice `json:"class,omitempty"`                 // what runs on the surface
	Exposure  *source.Choice `json:"exposure_class,omitempty"`        // of the code: XC4, B1, F2
	Control   *source.Choice `json:"crack_control,omitempty"`         // minor, moderate, strong
	Held      *source.Choice `json:"held,omitempty"`                  // yes, no: is the slab held at its ends?
	Hot       *source.Fact   `json:"warmer_top_K,omitempty"`          // greatest, over the thickness
	Cold      *source.Fact   `json:"colder_top_K,omitempty"`          // the same the other way, drying of the top counted in
	Cooling   *source.Fact   `json:"cooling_K,omitempty"`             // of the mean since the joints formed
	Shrinkage *source.Fact   `json:"shrinkage_microstrain,omitempty"` // mean, still to come
	Residual  *source.Fact   `json:"residual_kNm_m,omitempty"`        // moment the cracked slab still bears
	Filler    *source.Fact   `json:"filler_share,omitempty"`          // of its width that the filler stretches
	FillWidth *source.Fact   `json:"filled_width_m,omitempty"`        // of the groove
	BarYield  *source.Fact   `json:"steel_yield_MPa,omitempty"`
}
