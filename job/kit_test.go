package job

import (
	"math"

	"slabwright/site"
)

type siteProbe = site.Probe

var nan = math.NaN()
