package markdown

import "strings"

// forms tells what blocks of quoted texts look like.
var forms = map[Kind]string{
	Question: "A question has the form: ask \"…\", then answer \"…\".",
	Picture:  "A picture has its words below it: say \"…\".",
}

// question reads the body of a check question: ask "…", then answer "…". The
// texts may run over lines; line ends in them count as spaces.
func (r *reading) question(b *Block) {
	at := 0
	b.Ask, at = r.quoted(b, "ask", at)
	if at < 0 {
		return
	}
	b.Answer, at = r.quoted(b, "answer", at)
	if at < 0 {
		return
	}
	if rest := strings.TrimSpace(b.Body[at:]); rest != "" {
		at += strings.Index(b.Body[at:], rest)
		r.fail(b.At(false, at), len(firstLine(rest)), "A question ends with its answer. Another question has a block of its own.", "")
	}
}

// picture reads a picture: its name and the parts lit in it in the head, such
// as “bowls: impeller, bowl-wear-ring”, and say "…" in the body.
func (r *reading) picture(b *Block) {
	name, lit, _ := strings.Cut(b.Head, ":")
	if b.Name = strings.TrimSpace(name); b.Name == "" {
		r.fail(b.Off, b.Len, "A picture has a name, which stands behind the word “picture”.", "picture ladder")
	}
	for _, id := range strings.Split(lit, ",") {
		if id = strings.TrimSpace(id); id != "" {
			b.Lit = append(b.Lit, id)
		}
	}
	end := 0
	if b.Say, end = r.quoted(b, "say", 0); end >= 0 && strings.TrimSpace(b.Body[end:]) != "" {
		r.fail(b.At(false, end), 1, "A picture ends with its words.", "")
	}
}

// quoted reads one word and the text in quotation marks behind it, from a byte
// of the body on; it returns where it ended, or -1 after telling what is wrong.
func (r *reading) quoted(b *Block, word string, from int) (string, int) {
	at := from + len(b.Body[from:]) - len(strings.TrimLeft(b.Body[from:], " \t\r\n"))
	rest, ok := strings.CutPrefix(b.Body[at:], word)
	open := strings.TrimLeft(rest, " \t\r\n")
	if !ok || !strings.HasPrefix(open, `"`) {
		r.fail(b.At(false, at), len(firstLine(b.Body[at:])), "Expected "+word+" \"…\" here. "+forms[b.Kind], "")
		return "", -1
	}
	start := len(b.Body) - len(open) + 1
	end := strings.IndexByte(b.Body[start:], '"')
	if end < 0 {
		r.fail(b.At(false, start-1), 1, "The text that begins here has no closing quotation mark.", "")
		return "", -1
	}
	text := strings.Join(strings.Fields(b.Body[start:start+end]), " ")
	if text == "" {
		r.fail(b.At(false, start-1), 2, "There is nothing between the quotation marks.", "")
	}
	return text, start + end + 1
}

func firstLine(s string) string {
	line, _, _ := strings.Cut(s, "\n")
	return strings.TrimRight(line, " \t\r")
}
