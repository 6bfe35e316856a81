package restraint

import "flag"

// The property tests draw the same cases in every run; give -rapid.seed for others.
func init() {
	if err := flag.Set("rapid.seed", "20250919"); err != nil {
		panic(err)
	}
}
