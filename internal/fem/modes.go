package fem

// RigidModes returns the movements of all nodes that bend and strain nothing, as a
// multigrid solver wants them: for two unknowns a node those of a sheet, for three or
// four those of a plate.
func RigidModes(x, y []float64, block int) [][]float64 {
	modes := make([][]float64, 3)
	for k := range modes {
		modes[k] = make([]float64, len(x)*block)
	}
	for i := range x {
		at := i * block
		if block == 2 {
			modes[0][at], modes[1][at+1] = 1, 1
			modes[2][at], modes[2][at+1] = -y[i], x[i]
			continue
		}
		modes[0][at] = 1
		modes[1][at], modes[1][at+1] = x[i], 1
		modes[2][at], modes[2][at+2] = y[i], 1
	}
	return modes
}
