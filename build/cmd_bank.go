package main

import (
	"fmt"
	"io"
	"path/filepath"

	"columnbowl/build/class"
	"columnbowl/calcwasm/exercise"
	"columnbowl/calcwasm/formula"
)

// bank writes the question bank that “handout --qti” asks for.
func (a *classArgs) bank(office *class.Office, out, errOut io.Writer) error {
	if a.class != "" {
		return badUsage("a bank of questions is for no class: leave out --class, or leave out --qti")
	}
	if a.variants < 1 || a.variants > class.MostVariants {
		return badUsage("a question has 1 to %d variants, not %d", class.MostVariants, a.variants)
	}
	if a.seed == "" {
		a.seed = "1"
	}
	seed, err := seedOf(a.seed)
	if err != nil {
		return err
	}
	var templates []*exercise.Template
	for i := range office.Set.Templates {
		templates = append(templates, &office.Set.Templates[i])
	}
	if a.exercise != "" {
		if templates, err = chosen(office.Set, a.exercise); err != nil {
			return err
		}
	}
	system := formula.US
	if a.units == "si" {
		system = formula.SI
	}
	questions, err := office.Bank(templates, seed, a.variants, system, func(done, of int) {
		if of > 1 && (done%10 == 0 || done == of) {
			fmt.Fprintf(errOut, "questions of %d of %d exercises made\n", done, of)
		}
	})
	if err != nil {
		return err
	}
	text, err := class.Package(office.Book.Handbook.ID+"-"+a.seed, questions)
	if err != nil {
		return err
	}
	if err := class.Write(filepath.Dir(a.qti), []class.File{{Name: filepath.Base(a.qti), Text: text}}, a.replace); err != nil {
		return err
	}
	fmt.Fprintf(out, "%s of %s: %s.\n", plural(len(questions), "question"), plural(len(templates), "exercise"), a.qti)
	return nil
}
