package layout

import (
	"fmt"

	"slabwright/flexure"
)

// fullyHeld is the length of a panel, in radii of relative stiffness, from which its
// middle is held flat: there C of Bradbury first comes to 1.
//
// Source: Westergaard (1927), worked from the equation.
const fullyHeld = 6.69

// Held returns the share of its bending strength that a panel uses where its middle is
// held flat, and the length from which it is: no longer panel is bent more.
func (f SpacingFacts) Held() (share, from float64) {
	full := flexure.CurlFullRestraint(f.Modulus, f.Expansion, f.Difference, f.Poisson)
	return max(full, -full) / f.Flexural, fullyHeld * flexure.RelativeStiffness(f.Modulus, f.Thickness, f.Poisson, f.Support)
}

// Words says in plain words why the models allow the length they do.
func (l Limit) Words() string {
	share, from := l.Facts.Held()
	if share >= l.Use {
		return fmt.Sprintf("A panel of this concrete that is held flat uses %.0f %% of its bending strength, more than the %.0f %% that meets the risk: its length has to stay so short that its ends can lift.", 100*share, 100*l.Use)
	}
	return fmt.Sprintf("Curl bends a panel no more once its middle lies flat, from about %.1f m on: it then uses %.0f %% of its bending strength however long it is, and %.0f %% meets the risk. "+
		"Longer panels only drag more on the base. So curl and drag alone set no near limit here; late cuts, cold nights, locked joints and wheels on lifted edges do, and the rule of thumb stands for them.", from, 100*share, 100*l.Use)
}
