package layout

import (
	"fmt"
	"strings"

	"slabwright/plan"
)

func jointID(number int) string { return fmt.Sprintf("J%d", number) }

// signature is the joints of a slab as text, to the millimetre.
func signature(s plan.Slab) string {
	var b strings.Builder
	for _, j := range s.Joints {
		b.WriteString(string(j.Kind[0]))
		for _, p := range j.Path {
			fmt.Fprintf(&b, " %.3f,%.3f", p.X, p.Y)
		}
		b.WriteByte(';')
	}
	return b.String()
}
