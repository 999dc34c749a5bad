// Package arith is the exponential function, the logarithms and the power in
// plain Go, and the smooth line through points, so that a book made on one machine and read on another shows the same
// digits. The standard library has assembly for some processors, and the compiler
// may fuse x*y + z into one rounding on others. Here every product that may be
// added to something is wrapped in float64(), which the language defines as a
// rounding (an assignment is none),
// and nothing but + - * /, math.Sqrt and exact bit operations is used: amd64,
// arm64 and wasm give the same bits.
//
// Accuracy, measured against 300-bit references (testdata/references.csv): all
// four functions give the nearest float64 or its neighbour, that is, they are
// within 1 unit in the last place. Special cases are those of package math.
//
// The methods and coefficients of exp.go, log.go and pow.go are those of FDLIBM:
//
//	Copyright (C) 1993, 2004 by Sun Microsystems, Inc. All rights reserved.
//	Permission to use, copy, modify, and distribute this software is freely
//	granted, provided that this notice is preserved.
package arith
