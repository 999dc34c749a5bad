package book

import (
	"strconv"

	"go.yaml.in/yaml/v3"

	"columnbowl/build/markdown"
	"columnbowl/build/report"
)

// HandbookFile is the name of the file that orders the book.
const HandbookFile = "handbook.yaml"

func (h *Handbook) read(src []byte, found *report.List) {
	fields := []field{
		{"title", true, text(&h.Title)},
		{"id", true, text(&h.ID)},
		{"version", true, text(&h.Version)},
		{"units", false, oneOf(&h.Units, "us", "si")},
		{"money", false, text(&h.Money)},
		{"about", false, text(&h.About)},
		{"places", true, items(h.place)},
		{"chapters", true, texts(&h.Chapters)},
		{"chain", false, items(groups("the chain", &h.Chain))},
		{"chain-title", false, text(&h.ChainTitle)},
		{"chain-facts", false, pairs("a list of terms with their values, such as static-level: 140 ft", func(term, value string) {
			h.ChainFacts = append(h.ChainFacts, Fact{term, value})
		})},
		{"chain-want", false, text(&h.ChainWant)},
		{"desk", false, items(groups("the desk", &h.Desk))},
		{"desk-ask", false, pairs("a list of terms, each with why it is asked", func(term, why string) {
			h.DeskAsk = append(h.DeskAsk, Fact{term, why})
		})},
		{"desk-want", false, text(&h.DeskWant)},
		{"choice", false, items(groups("the choice of bowls", &h.Choice.Groups))},
		{"choice-title", false, text(&h.Choice.Title)},
		{"choice-facts", false, pairs("a list of terms with their values, such as capacity: 800 gpm", func(term, value string) {
			h.Choice.Facts = append(h.Choice.Facts, Fact{term, value})
		})},
		{"choice-want", false, text(&h.Choice.Want)},
		{"desk-what", false, items(h.whatIf)},
		{"takeoff", false, items(groups("the take-off", &h.TakeOff.Groups))},
		{"takeoff-title", false, text(&h.TakeOff.Title)},
		{"takeoff-facts", false, pairs("a list of terms with their values, such as asked-setting: 237 ft", func(term, value string) {
			h.TakeOff.Facts = append(h.TakeOff.Facts, Fact{term, value})
		})},
		{"takeoff-want", false, text(&h.TakeOff.Want)},
	}
	all := markdown.Span{Len: len(src)}
	h.titled = readYAML(HandbookFile, src, all, "the file "+HandbookFile, fields, found)
	if h.Units == "" {
		h.Units = "us"
	}
}

func (h *Handbook) place(y *yamlReader, path string, n *yaml.Node) {
	var p Place
	y.mapping(path, "a place", n, []field{{"id", true, text(&p.ID)}, {"name", true, text(&p.Name)}, {"about", true, text(&p.About)}})
	h.Places = append(h.Places, p)
}

func (h *Handbook) whatIf(y *yamlReader, path string, n *yaml.Node) {
	var q WhatIf
	y.mapping(path, "a prepared question", n, []field{{"ask", true, text(&q.Name)}, {"show", true, texts(&q.Show)}, {"change", false, texts(&q.Change)},
		{"by", false, text(&q.By)}, {"sizes", false, texts(&q.Sizes)}, {"page", false, text(&q.Page)}})
	h.DeskWhat = append(h.DeskWhat, q)
}

// groups reads groups of terms of a sheet.
func groups(of string, list *[]Group) func(*yamlReader, string, *yaml.Node) {
	return func(y *yamlReader, path string, n *yaml.Node) {
		var g Group
		y.mapping(path, "a group of "+of, n, []field{{"name", true, text(&g.Name)}, {"terms", true, texts(&g.Terms)}})
		*list = append(*list, g)
	}
}

// item is the path of an item of a list.
func item(list string, i int) string { return list + "." + strconv.Itoa(i) }
