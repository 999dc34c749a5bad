package unit

import (
	"math"
	"strconv"
	"strings"
)

const (
	significant  = 4   // digits shown
	smallestAsIs = -4  // numbers below 10^-4 are written with a power of ten
	largestAsIs  = 10  // and so are numbers from 10^10 on
	groupFrom    = 5   // grouping starts with five digits
	noNumber     = "–" // for NaN and infinities
	trueMinus    = "\u2212"
	noBreak      = "\u00a0"

	// A sum is in the reader's own currency, whatever that is: no sign and no word
	// of one country stands behind it, and a price is told by what it is for.
	currency = "in your currency" // it may break: a phone has no room for it in one line
	perPrint = "per" + noBreak
)

// Format writes an SI value as a number in the unit u, without the unit: four
// significant digits, zeros at the end of decimals dropped, whole numbers never
// rounded before the unit digit, "24,973" from five digits on, a true minus sign,
// "1.2×10⁻⁵" outside 0.0001 to 10,000,000,000, and "–" for what is no number.
func Format(si float64, u *Unit) string { return pageNumber(u.FromSI(si)) }

// FormatWith is Format with the printed unit behind a no-break space.
func FormatWith(si float64, u *Unit) string {
	number := Format(si, u)
	if u.Print == "" {
		return number
	}
	return number + noBreak + u.Print
}

// FormatPlain is Format for the notation, for links and for CSV: no grouping,
// "-" for minus and "1.2e-5" for powers of ten. What is no number gives "NaN",
// which no reader takes.
func FormatPlain(si float64, u *Unit) string {
	x := u.FromSI(si)
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return "NaN"
	}
	sign, digits, exponent := parts(x)
	if exponent != 0 {
		digits += "e" + strconv.Itoa(exponent)
	}
	return sign + digits
}

func pageNumber(x float64) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return noNumber
	}
	sign, digits, exponent := parts(x)
	if sign != "" {
		sign = trueMinus
	}
	if exponent != 0 {
		return sign + digits + "×10" + raised(exponent)
	}
	return sign + grouped(digits)
}

// parts writes x as sign, digits and a power of ten, which is 0 for numbers that
// are written out.
func parts(x float64) (sign, digits string, exponent int) {
	if x == 0 {
		return "", "0", 0
	}
	if x < 0 {
		sign = "-"
	}
	first := exponentOf(x)
	if first >= smallestAsIs && first < largestAsIs {
		text := decimal(steps(x, max(0, significant-1-first)), max(0, significant-1-first))
		return sign, text, 0
	}
	mantissa, err := strconv.ParseFloat(strconv.FormatFloat(math.Abs(x), 'e', 15, 64)[:17], 64)
	if err != nil {
		return sign, "0", 0
	}
	digits = decimal(steps(mantissa, significant-1), significant-1)
	if digits == "10" {
		digits, first = "1", first+1
	}
	return sign, digits, first
}

// decimal writes whole/10^decimals without zeros at the end of the decimals.
func decimal(whole float64, decimals int) string {
	text := wholeText(whole)
	if decimals == 0 {
		return text
	}
	if short := decimals + 1 - len(text); short > 0 {
		text = strings.Repeat("0", short) + text
	}
	cut := len(text) - decimals
	return strings.TrimRight(strings.TrimRight(text[:cut]+"."+text[cut:], "0"), ".")
}

// wholeText writes a whole number.
func wholeText(whole float64) string {
	if whole < 1e15 { // most are: an integer is written much quicker than a float
		return strconv.FormatInt(int64(whole), 10)
	}
	return strconv.FormatFloat(whole, 'f', 0, 64)
}

// grouped puts commas between thousands from five digits on.
func grouped(digits string) string {
	whole, rest, found := strings.Cut(digits, ".")
	if len(whole) < groupFrom {
		return digits
	}
	first := (len(whole)-1)%3 + 1
	var b strings.Builder
	b.WriteString(whole[:first])
	for i := first; i < len(whole); i += 3 {
		b.WriteString("," + whole[i:i+3])
	}
	if found {
		b.WriteString("." + rest)
	}
	return b.String()
}

// raised prints an exponent in superscript digits.
func raised(exponent int) string {
	digits := [...]string{"⁰", "¹", "²", "³", "⁴", "⁵", "⁶", "⁷", "⁸", "⁹"}
	var b strings.Builder
	for _, r := range strconv.Itoa(exponent) {
		if r == '-' {
			b.WriteString("⁻")
			continue
		}
		b.WriteString(digits[r-'0'])
	}
	return b.String()
}
