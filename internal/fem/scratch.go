package fem

import "sync"

// scratch is room for the geometry and the fields of one element, which would take
// longer to clear than to fill.
type scratch struct {
	g geometry
	f plateField
}

var scratches = sync.Pool{New: func() any { return new(scratch) }}

func takeScratch() *scratch { return scratches.Get().(*scratch) }

func (w *scratch) give() { scratches.Put(w) }
