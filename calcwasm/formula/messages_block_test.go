package formula

import "testing"

func TestMessagesOfWorked(t *testing.T) {
	complain(t, "worked", []complaint{
		says("«»", "This example expects nothing: add a line “expect term = value”."),
		says("given total-head = 5 ft«»", "This example expects nothing: add a line “expect term = value”."),
		says("«givn» total-head = 5 ft", "Expected a line “given term = value” or “expect term = value”, but “givn” stands here."),
		says("given total-head«»", "Expected “=”, but the text ends here."),
		says("given total-head «5 ft»", "Expected “=”, but “5 ft” stands here."),
		says("given total-head =«»", "Expected a number with its unit, but the text ends here."),
		says("given total-head = «about» 5 ft", "Expected a number with its unit, but “about” stands here."),
		says("expect «5 ft»", "Expected the name of a term, but “5 ft” stands here."),
		says("expect total-head = «5»", "“total-head” is a length, and this is a bare number. → 5 ft"),
		says("expect total-head = «5 gpm»", "“total-head” is a length, and this is a flow."),
		says("expect «total-haed» = 5 ft", "There is no term “total-haed”. → total-head"),
		says("expect build = «oil-lubricatd»", "“build” is one of: water-lubricated, oil-lubricated or submersible. → oil-lubricated"),
		says("expect build = «5 ft»", "“build” is one of: water-lubricated, oil-lubricated or submersible."),
		says("given total-head = 5 ft, «total-head = 6 ft»\nexpect setting = 2 ft", "“total-head” stands here twice."),
		says("given total-head = 5 ft\ngiven «total-head = 6 ft»\nexpect setting = 2 ft", "“total-head” stands here twice."),
		says("given total-head = «200 to 180 ft»\nexpect setting = 2 ft", "A range runs from the lower value to the higher one."),
		says("given total-head = 5 ft «field-head» = 2 ft\nexpect setting = 2 ft", "Expected a line “given term = value” or “expect term = value”, but “field-head” stands here."),
	})
}

func TestMessagesOfMistakes(t *testing.T) {
	const edits = "put, leave out, minus for plus, plus for minus, times for over, over for times, bare, whole or a function"
	complain(t, "mistake", []complaint{
		says("«s»ay \"x\"", "A mistake needs an edit: put … for …, leave out …, minus for plus …, times for over …, bare … for …, whole …."),
		says("«swap» field-head for total-head\nsay \"x\"", "Expected "+edits+", but “swap” stands here."),
		says("put«»", "Expected a term, a number or “(”, but the text ends here."),
		says("put field-head«»", "Expected “for”, but the text ends here."),
		says("put field-head for setting«»", "Expected a line say \"…\", but the text ends here."),
		says("put field-head for setting\nsay «\"\"»", "There is nothing between the quotation marks."),
		says("put field-head for setting\nsay \"x\" «more»", "Expected an operator or the end, but “more” stands here."),
		says("put «total-haed» for field-head\nsay \"x\"", "There is no term “total-haed”. → total-head"),
		says("leave «field-head»\nsay \"x\"", "Expected “out”, but “field-head” stands here."),
		says("leave out «feild-head»\nsay \"x\"", "There is no term “feild-head”. → field-head"),
		says("minus for «field-head»\nsay \"x\"", "Expected “plus”, but “field-head” stands here."),
		says("plus for «plus» field-head\nsay \"x\"", "Expected “minus”, but “plus” stands here."),
		says("times for «times» field-head\nsay \"x\"", "Expected “over”, but “times” stands here."),
		says("over «times» field-head\nsay \"x\"", "Expected “for”, but “times” stands here."),
		says("«bare field-head for total-head»\nsay \"x\"", "Write both with a unit: bare discharge-pressure[psi] for pressure-head[ft]."),
		says("round-down for «rond-up»\nsay \"x\"", "There is no function “rond-up”. → round-up"),
		says("whole field-head\n«say» \"x\"", "Expected “=” between the two sides of the relation, but “say” stands here."),
		says("whole total-head = «capacity»\nsay \"x\"", "The left-hand side is a length, the right-hand side a flow."),
		says("put 1714 for 3960\nsay \"x\"\nin «a»", "After “in” stands the title of a worked example, in quotation marks."),
	})
}

func TestMessagesOfCautions(t *testing.T) {
	complain(t, "caution", []complaint{
		says("«»", "Expected a line “when condition”, but the text ends here."),
		says("«say» \"x\"", "Expected a line “when condition”, but “say” stands here."),
		says("when«»", "Expected a term, a number or “(”, but the text ends here."),
		says("when total-head > 5 ft«»", "Expected a line say \"…\", but the text ends here."),
		says("when total-head > 5 ft\n«sya» \"x\"", "Expected a line say \"…\", but “sya” stands here."),
		says("when total-head > 5 ft\nsay «5»", "Expected text in quotation marks, but “5” stands here."),
		says("when «deep» > 5 ft\nsay \"x\"", "There is no term “deep”."),
	})
}

func TestMessagesOfAssumptionsAndEstimates(t *testing.T) {
	complain(t, "assume", []complaint{
		says("«»", "Expected the name of a term, but the text ends here."),
		says("specific-gravity«»", "Expected “=”, but the text ends here."),
		says("specific-gravity = 1«»", "Expected a line say \"…\", but the text ends here."),
		says("total-head = «5»\nsay \"x\"", "“total-head” is a length, and this is a bare number. → 5 ft"),
	})
	complain(t, "estimate", []complaint{
		says("«»", "Expected a term, a number or “(”, but the text ends here."),
		says("total-head«»", "Expected “=” between the two sides of the relation, but the text ends here."),
		says("total-head = 5 ft«»", "Expected a line say \"…\", but the text ends here."),
		says("«total-head + field-head» = 5 ft\nsay \"x\"", "An estimate fills one term: that term alone stands on the left-hand side."),
	})
}
