package draw

// Colours of everything slabwright prints. State is never told by colour alone.
var (
	White     = RGB(0xff, 0xff, 0xff)
	Ink       = RGB(0x20, 0x26, 0x2b)
	Quiet     = RGB(0x5f, 0x68, 0x6f)
	Faint     = RGB(0xb4, 0xba, 0xbe)
	Chalk     = RGB(0x1d, 0x52, 0x86) // joints, and what a person can act on
	Vermilion = RGB(0xc2, 0x43, 0x00) // cracks, and what must not be missed
	Wash      = RGB(0xee, 0xf0, 0xf1)
)
