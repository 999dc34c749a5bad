package site

import (
	"io/fs"
	"strings"
	"testing"
)

func TestFewSigns(t *testing.T) {
	sprite, err := signSprite()
	if err != nil {
		t.Fatal(err)
	}
	page := "<body>" + string(sprite) + "<p>" + string(signUse("given")) + "</p></body>"
	few := string(FewSigns([]byte(page)))
	if strings.Count(few, "<symbol") != 1 || !strings.Contains(few, `<symbol id="sign-given"`) || !strings.HasSuffix(few, string(signUse("given"))+"</p></body>") {
		t.Errorf("a page that shows one sign carries: %s", few)
	}
	if bare := "<body><p>no signs</p></body>"; string(FewSigns([]byte(bare))) != bare {
		t.Error("a page without signs was changed")
	}
}

// TestScriptBringsEverySign: what a page leaves out the script has.
func TestScriptBringsEverySign(t *testing.T) {
	script, err := Files.ReadFile("scripts/signs.ts")
	if err != nil {
		t.Fatal(err)
	}
	names, err := fs.Glob(Files, "signs/*.svg")
	if err != nil || len(names) == 0 {
		t.Fatal("no signs", err)
	}
	for _, name := range names {
		if !strings.Contains(string(script), `"../`+name+`"`) {
			t.Errorf("scripts/signs.ts does not bring %s", name)
		}
	}
}
