// Package highlight writes the notations of the book as HTML in which each kind
// of word has a class of its own: pages of the content, the notation inside
// them, YAML, CSV and commands.
//
// Conventions. Colour comes from classes alone, because the pages forbid style
// attributes. The text itself is never changed: without the tags it is what was
// given, byte for byte. What a lexer does not know stays plain, and nothing
// fails.
//
// It is the only package that knows the library of lexers.
package highlight

import (
	"html"
	"strings"

	"github.com/alecthomas/chroma/v2"
)

// Languages are the names that HTML takes, in the order in which they are told.
var Languages = []string{"page", "notation", "yaml", "csv", "shell"}

var lexers = map[string]chroma.Lexer{"page": pageLexer, "notation": notationLexer, "yaml": yamlLexer, "csv": csvLexer, "shell": shellLexer}

// Classes are the classes of the tags. Each is told by its look in
// site/styles/guide.css.
const (
	keyClass     = "hk" // a word of the notation, a key, a command
	nameClass    = "hn" // the id of a term or a part, the goal of a link
	numberClass  = "hm" // a number with its unit
	textClass    = "hs" // a text in quotation marks
	commentClass = "hc"
	signClass    = "hp" // a sign: an operator, a bracket, a fence
	headClass    = "hh" // a heading of the text
)

// class is the class of a kind of token; empty for plain text.
func class(t chroma.TokenType) string {
	switch {
	case t == chroma.GenericHeading:
		return headClass
	case t.InCategory(chroma.Keyword):
		return keyClass
	case t.InCategory(chroma.Name):
		return nameClass
	case t.InSubCategory(chroma.LiteralNumber):
		return numberClass
	case t.InSubCategory(chroma.LiteralString):
		return textClass
	case t.InCategory(chroma.Comment):
		return commentClass
	case t.InCategory(chroma.Operator), t.InCategory(chroma.Punctuation):
		return signClass
	}
	return ""
}

// HTML writes a text in one of the languages. An unknown language is a mistake
// of the caller and leaves the text plain.
func HTML(language, text string) string {
	lexer := lexers[language]
	if lexer == nil {
		return html.EscapeString(text)
	}
	tokens, err := lexer.Tokenise(nil, text)
	if err != nil {
		return html.EscapeString(text)
	}
	var b strings.Builder
	open := ""
	for token := tokens(); token != chroma.EOF; token = tokens() {
		c := class(token.Type)
		if strings.TrimSpace(token.Value) == "" {
			c = open // a space breaks no run
		}
		if c != open {
			closeTag(&b, open)
			if open = c; c != "" {
				b.WriteString(`<span class="` + c + `">`)
			}
		}
		b.WriteString(html.EscapeString(token.Value))
	}
	closeTag(&b, open)
	return b.String()
}

func closeTag(b *strings.Builder, open string) {
	if open != "" {
		b.WriteString("</span>")
	}
}

// Of is the language of a file of the content.
func Of(file string) string {
	switch {
	case strings.HasSuffix(file, ".md"):
		return "page"
	case strings.HasSuffix(file, ".csv"):
		return "csv"
	}
	return "yaml"
}
