package ask

// scenes looks for phrases that tell what a sentence is about, and reads what is
// said in it accordingly: in a field test “760 gpm” is the tested capacity, and
// a level from the top of the casing is a reading of the tape.
func (s *session) readScenes() {
	for i := range s.tokens {
		t := &s.tokens[i]
		if t.class != word {
			continue
		}
		for _, p := range s.vocabulary.scenes[t.stem] {
			c, ok := s.fits(p, i)
			if !ok || s.negated(c.from, c.to) {
				continue
			}
			for k := c.from; k < c.to; k++ {
				s.tokens[k].scene = true
			}
			c.first, c.last = s.tokens[c.from].from, s.tokens[c.to-1].to
			s.said = append(s.said, c)
			s.play(len(s.said) - 1)
		}
	}
}

// play reads the amounts within reach of a scene.
func (s *session) play(c int) {
	p := &s.said[c]
	from, to := s.around(p.from, p.to, s.stops)
	for a := range s.amounts {
		am := &s.amounts[a]
		in := from <= am.token && am.token < to
		if !in && !p.phrase.setting.wide || am.none || am.word {
			continue
		}
		for i := 0; i+1 < len(p.phrase.setting.read); i += 2 {
			said, meant := p.phrase.setting.read[i], p.phrase.setting.read[i+1]
			if in && s.nearer(a, p) {
				continue
			}
			if in {
				s.turn(c, a, said, meant)
			} else {
				s.suggest(a, said, meant)
			}
		}
	}
}

// nearer tells whether an amount of the same kind stands between one and a scene
// behind it: “capacity 11, was 15 gpm/ft when new”.
func (s *session) nearer(a int, p *saying) bool {
	for o := a + 1; o < len(s.amounts) && s.amounts[o].token < p.from; o++ {
		if s.alikeAmounts(a, o) {
			return true
		}
	}
	return false
}

// alikeAmounts tells whether two amounts may be of one kind.
func (s *session) alikeAmounts(a, b int) bool {
	for _, e := range s.evidence[a] {
		if e.score >= some && s.fits1(&s.amounts[b], e.term) {
			return true
		}
	}
	return false
}

// stops tells whether a sentence ends here.
func (s *session) stops(k int) bool { return s.closes(k) && s.tokens[k].text != "," }

// byScene is what a scene says for a term by the unit alone.
const byScene = 60

// turn reads one amount of a scene: what is said for a term is said for the one
// that is meant, and its unit alone speaks for that one as well.
func (s *session) turn(c, a, said, meant int) {
	am := &s.amounts[a]
	if s.fit(am, meant).text == "" {
		return
	}
	moved := false
	for i := range s.evidence[a] {
		if e := &s.evidence[a][i]; e.term == said && said != meant {
			e.moved, e.said = true, e.term
			e.term, moved = meant, true
		}
	}
	if moved || am.bare() || said == meant && am.token < s.said[c].from || !s.plainFor(am, said) || s.spoken(a) {
		return
	}
	s.evidence[a] = append(s.evidence[a], evidence{saying: c, term: meant, score: byScene})
}

// suggest lets an amount of another sentence be either: a level that is told
// after a tape may have been reckoned from it.
func (s *session) suggest(a, said, meant int) {
	if s.fit(&s.amounts[a], meant).text == "" {
		return
	}
	for _, e := range s.evidence[a] {
		if e.term == said {
			e.moved, e.said, e.term, e.score = true, said, meant, e.score+2*perWord
			s.evidence[a] = append(s.evidence[a], e)
			return
		}
	}
}

// spoken tells whether a phrase says enough for an amount.
func (s *session) spoken(a int) bool {
	for _, e := range s.evidence[a] {
		if e.score >= enough && s.said[e.saying].phrase.kind != scene {
			return true
		}
	}
	return false
}

// plainFor tells whether the unit of an amount may mean a term by itself.
func (s *session) plainFor(a *amount, term int) bool {
	for _, u := range a.units() {
		for g := range s.groups {
			if s.groups[g].has(u) {
				for _, t := range s.groups[g].terms {
					if t == term {
						return true
					}
				}
			}
		}
	}
	return false
}
