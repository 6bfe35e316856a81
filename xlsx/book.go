package xlsx

import "github.com/xuri/excelize/v2"

var _ = excelize.NewFile
