package report

import "slabwright/internal/draw"

// Colours of the reports. State is never told by colour alone.
var (
	paper     = draw.White
	ink       = draw.Ink
	quiet     = draw.Quiet
	faint     = draw.Faint
	chalk     = draw.Chalk
	vermilion = draw.Vermilion
	wash      = draw.Wash
	washBlue  = draw.RGB(0xdb, 0xe7, 0xf2)
	washWarm  = draw.RGB(0xf6, 0xe0, 0xd4)
	green     = draw.RGB(0x00, 0x74, 0x56)
	none      = draw.Color{}
)

// Pens by what a line is; they differ by weight and dash so that a black and
// white print reads the same.
var (
	penOutline   = draw.Pen{Color: ink, Width: 0.7}
	penOpening   = draw.Pen{Color: ink, Width: 0.5}
	penFixture   = draw.Pen{Color: ink, Width: 0.35}
	penSawn      = draw.Pen{Color: chalk, Width: 0.25, Dash: []float64{5, 1.3}}
	penFormed    = draw.Pen{Color: chalk, Width: 0.25}
	penIsolation = draw.Pen{Color: chalk, Width: 0.25}
	penDowel     = draw.Pen{Color: chalk, Width: 0.4}
	penBar       = draw.Pen{Color: faint, Width: 0.06}
	penCrack     = draw.Pen{Color: vermilion, Width: 0.45, Round: true}
	penAlong     = draw.Pen{Color: vermilion, Width: 0.7, Dash: []float64{0.1, 1.3}, Round: true}
	penPatch     = draw.Pen{Color: vermilion, Width: 0.25, Dash: []float64{0.3, 0.9}, Round: true}
	penPour      = draw.Pen{Color: quiet, Width: 0.12, Dash: []float64{2.4, 0.7, 0.4, 0.7}}
	penUnseen    = draw.Pen{Color: quiet, Width: 0.12}
	penMeasure   = draw.Pen{Color: quiet, Width: 0.12}
)

var unseenHatch = &draw.Hatch{Angle: 45, Pitch: 1.7, Pen: penUnseen}
