package reckon

import "strconv"

func ftoa(v float64) string { return strconv.FormatFloat(v, 'f', 12, 64) }
