package formula

import (
	"columnbowl/calcwasm/arith"
	"columnbowl/calcwasm/unit"
)

// ownCheck is the rule for the arguments of a function of the notation, nil
// for one of the physics. It is apart from the functions themselves so that a
// page, which takes checked expressions only, does not have to load it.
func ownCheck(f *Func) func(p *parser, e *Expr) unit.Dim {
	switch f.Name {
	case "min", "max":
		return checkAlike
	case "remainder":
		return checkRemainder
	case "sqrt":
		return checkSqrt
	case "abs":
		return checkOne
	case "round-up", "round-down":
		return checkRound
	case "table":
		return checkPoints
	case "curve":
		return checkCurve
	}
	return nil
}

func checkAlike(p *parser, e *Expr) unit.Dim {
	if len(e.Args) < 2 {
		p.failExpr(e, e.Func.Name+"(a, b) compares two values or more.", "")
		return unit.Dim{}
	}
	for _, a := range e.Args[1:] {
		if a.Dim != e.Args[0].Dim {
			p.failExpr(a, p.text(e.Args[0])+" is "+dimWord(e.Args[0].Dim)+" and "+p.text(a)+" "+dimWord(a.Dim)+": they cannot be compared.", "")
		}
	}
	return e.Args[0].Dim
}

func checkRemainder(p *parser, e *Expr) unit.Dim {
	if len(e.Args) != 2 {
		p.failExpr(e, "remainder(a, step) takes two values: what is divided, and the step that is taken off it.", "")
		return unit.Dim{}
	}
	return checkAlike(p, e)
}

func checkOne(p *parser, e *Expr) unit.Dim {
	if len(e.Args) != 1 {
		p.failExpr(e, e.Func.Name+"(x) takes one value.", "")
		return unit.Dim{}
	}
	return e.Args[0].Dim
}

func checkSqrt(p *parser, e *Expr) unit.Dim {
	d, ok := checkOne(p, e).Pow(1, 2)
	if !ok {
		p.failExpr(e, "The root of "+p.text(e)+" has no meaning here.", "")
	}
	return d
}

func checkRound(p *parser, e *Expr) unit.Dim {
	d := checkOne(p, e)
	if !d.IsNone() {
		p.failExpr(e, e.Func.Name+"(x) makes a whole number: take the bare number of the quantity, name[unit].", "")
	}
	return d
}

// checkPoints turns the arguments behind the first one into points.
func checkPoints(p *parser, e *Expr) unit.Dim {
	n := len(e.Points)
	if len(e.Args) != 1+2*n || n < 2 || e.mixed {
		p.failExpr(e, e.Func.Name+"(x, x1: y1, x2: y2, …) takes one value and two points or more.", "")
		return unit.Dim{}
	}
	x, y := e.Args[0].Dim, e.Args[2].Dim
	for i := range e.Points {
		a, b := e.Args[1+2*i], e.Args[2+2*i]
		ax, oka := constant(a)
		by, okb := constant(b)
		switch {
		case !oka || !okb:
			p.failExpr(a, "A point is a pair of plain numbers with units.", "")
		case a.Dim != x:
			p.failExpr(a, p.text(a)+" is "+dimWord(a.Dim)+", the value looked up is "+dimWord(x)+".", "")
		case b.Dim != y:
			p.failExpr(b, p.text(b)+" is "+dimWord(b.Dim)+", the first point has "+dimWord(y)+".", "")
		case i > 0 && ax <= e.Points[i-1].X:
			p.failExpr(a, "The points must rise: "+p.text(a)+" is not beyond the point before it.", "")
		}
		e.Points[i] = Point{X: ax, Y: by}
	}
	e.Unit = e.Args[1].Unit
	e.Args = e.Args[:1]
	return y
}

func checkCurve(p *parser, e *Expr) unit.Dim {
	d := checkPoints(p, e)
	if len(p.errors) == 0 {
		e.slopes = arith.Slopes(e.Points)
	}
	return d
}
