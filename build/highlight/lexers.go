package highlight

import (
	"strings"

	"github.com/alecthomas/chroma/v2"
)

// words makes a pattern of whole words. A hyphen belongs to a name, so it ends
// no word: least is a word of the notation, and least-capacity is a term.
func words(list string) string {
	return `(?:` + strings.Join(strings.Fields(list), "|") + `)(?![\w-])`
}

// What begins a line of a block, and what joins things inside it.
const (
	openers = "danger given expect say ask answer when take items choose right wrong because draw keep to in"
	edits   = "put leave out minus plus times over bare whole for"
	joiners = "and or not from step one of each within"
	calls   = "min max sqrt abs round-up round-down table curve remainder"
	blocks  = "formula si estimate assume worked mistake caution question picture behind bowls draw ask choose order"
)

// number is a number with its unit, on one line.
const number = `[+-]?\d[\d.,]*(?:e[+-]?\d+)?(?: ?(?:%|\$|(?:ft|in|m|mm|psi|kPa|gpm|gal|hp|kW|rpm|lbf|lb|h|s|min|yr|degF|degC|mg|V|A|Hz)(?![\w-])(?:/[\w]+|\^\d)*))?`

// notation are the rules inside a block; a page has them between its fences.
func notation() []chroma.Rule {
	return []chroma.Rule{
		{Pattern: `"[^"]*"?`, Type: chroma.LiteralString},
		{Pattern: `#.*`, Type: chroma.Comment},
		// A number takes its unit along: “2.66 ft/100ft”, “140 ft”, “81 %”.
		{Pattern: number, Type: chroma.LiteralNumber},
		{Pattern: `\[[^\]\n]*\]`, Type: chroma.LiteralNumber}, // capacity[gpm]
		{Pattern: words(openers + " " + edits + " " + joiners), Type: chroma.Keyword},
		{Pattern: words(calls), Type: chroma.Keyword},
		{Pattern: `[a-z][a-z0-9]*(?:-[a-z0-9]+)*(?::[a-z-]+)?`, Type: chroma.NameVariable},
		{Pattern: `[-+*/^=<>!(){},;:]+`, Type: chroma.Operator},
		{Pattern: `\s+`, Type: chroma.Text},
		{Pattern: `.`, Type: chroma.Text},
	}
}

func yamlRules() []chroma.Rule {
	return []chroma.Rule{
		{Pattern: `#.*`, Type: chroma.Comment},
		{Pattern: `"(?:\\.|[^"\\])*"?`, Type: chroma.LiteralString},
		{Pattern: `([\w-]+)(:)(?=\s|$)`, Type: chroma.ByGroups(chroma.Keyword, chroma.Punctuation)},
		{Pattern: number + `(?![\w-])`, Type: chroma.LiteralNumber},
		{Pattern: `[\[\]{},]|-(?=\s)`, Type: chroma.Punctuation},
		{Pattern: `[a-z][a-z0-9]*(?:-[a-z0-9]+)+`, Type: chroma.NameVariable},
		{Pattern: `[^\s\[\]{},:#"]+`, Type: chroma.Text},
		{Pattern: `\s+|.`, Type: chroma.Text},
	}
}

func lexer(name string, rules func() chroma.Rules) chroma.Lexer {
	return chroma.MustNewLexer(&chroma.Config{Name: name, EnsureNL: false}, rules)
}

var notationLexer = lexer("the notation of the book", func() chroma.Rules { return chroma.Rules{"root": notation()} })

var yamlLexer = lexer("YAML", func() chroma.Rules { return chroma.Rules{"root": yamlRules()} })

// A page: the title block between two lines ---, then text with links and
// fenced blocks.
var pageLexer = lexer("a page of the book", func() chroma.Rules {
	return chroma.Rules{
		"root": {
			{Pattern: `\A---\n`, Type: chroma.Punctuation, Mutator: chroma.Push("title")},
			chroma.Include("text"),
		},
		"title": append([]chroma.Rule{{Pattern: `^---\n`, Type: chroma.Punctuation, Mutator: chroma.Pop(1)}}, yamlRules()...),
		"text": {
			{Pattern: "^(```)(" + words(blocks) + ")([^\n]*\n)", Type: chroma.ByGroups(chroma.Punctuation, chroma.Keyword, chroma.Text), Mutator: chroma.Push("block")},
			{Pattern: `^##+[^\n]*`, Type: chroma.GenericHeading},
			{Pattern: `(\[)([^\]\n]*)(\]\()([^)\n]*)(\))`, Type: chroma.ByGroups(chroma.Punctuation, chroma.Text, chroma.Punctuation, chroma.NameVariable, chroma.Punctuation)},
			{Pattern: `\{[a-z][a-z0-9-]*\}`, Type: chroma.NameVariable}, // a fact of an exercise
			{Pattern: "[^\\n\\[{#`]+", Type: chroma.Text},
			{Pattern: `\n|.`, Type: chroma.Text},
		},
		"block": append([]chroma.Rule{{Pattern: "^```", Type: chroma.Punctuation, Mutator: chroma.Pop(1)}}, notation()...),
	}
})

var csvLexer = lexer("CSV", func() chroma.Rules {
	return chroma.Rules{"root": {
		{Pattern: `#.*`, Type: chroma.Comment},
		{Pattern: `"(?:""|[^"])*"?`, Type: chroma.LiteralString},
		{Pattern: `[+-]?\d[\d.]*(?=[,\s]|$)`, Type: chroma.LiteralNumber},
		{Pattern: `[,;]`, Type: chroma.Punctuation},
		{Pattern: `[^,;\n"#]+`, Type: chroma.Text},
		{Pattern: `\n|.`, Type: chroma.Text},
	}}
})

var shellLexer = lexer("commands", func() chroma.Rules {
	return chroma.Rules{"root": {
		{Pattern: `#.*`, Type: chroma.Comment},
		{Pattern: `"[^"]*"?|'[^']*'?`, Type: chroma.LiteralString},
		{Pattern: `^(\s*)(columnbowl|make|go)( +[a-z]+)?`, Type: chroma.ByGroups(chroma.Text, chroma.Keyword, chroma.Keyword)},
		{Pattern: `(?<=\s)--?[a-z][a-z-]*`, Type: chroma.NameVariable},
		{Pattern: `(?<=\s)\d[\d.]*(?=\s|$)`, Type: chroma.LiteralNumber},
		{Pattern: `[^\s"'#-]+`, Type: chroma.Text},
		{Pattern: `\s+|.`, Type: chroma.Text},
	}}
})
