# make         bind the handbook into out/
# make proof   check the content and bind nothing (go run ./build proof -v lists the terms without an outside check)
# make test    everything that must pass before a change is kept
# make release programs for people without Go, with the book inside, into release/
# make bench   measure
# make pictures  the pictures of README.md anew, from the bound handbook
# make fuzz    look for inputs that break the readers (FUZZTIME=2m for longer)

OUT      ?= out
FUZZTIME ?= 20s

# Packages of the site's test tools may carry Go files of their own inside
# node_modules: they are not ours to vet.
PACKAGES = $(shell go list ./... | grep -v /node_modules/)
SOURCES  = $(shell find . -name '*.go' -not -path '*/node_modules/*' -not -path './$(OUT)/*')

.PHONY: bind release proof test format vet unit wasm pages bench pictures fuzz clean

bind:
	go run ./build bind --out $(OUT)

proof:
	go run ./build proof

# One file for each common system: it needs nothing beside it.
release:
	go run ./build/release --out release

# In the order of how fast a step can fail. proof prints what the book was compared with.
test: format vet wasm proof unit pages

format:
	@bad="$$(gofmt -l $(SOURCES))"; if [ -n "$$bad" ]; then echo "not formatted, run gofmt -w on:"; echo "$$bad"; exit 1; fi

vet:
	go vet $(PACKAGES)

# The engine is vetted and linked a second time for the page's machine: an int
# has 32 bits there, and a package that needs an operating system only fails
# when it is linked.
wasm:
	GOOS=wasip1 GOARCH=wasm go vet ./calcwasm/...
	GOOS=wasip1 GOARCH=wasm go build -buildmode=c-shared -o /dev/null ./calcwasm

unit:
	go test $(PACKAGES)

# The browser looks at the pages of the real content, so they are bound first.
pages: bind
	bash site/tests/run.sh

# The pages are measured in a browser; run.sh installs what that needs. At the
# end stands every budget once more, one line each. One package at a time, so
# that they do not measure one another.
bench: bind
	@said=$$(mktemp); trap 'rm -f "$$said"' EXIT; \
	{ go test -p 1 -run '^$$' -bench . -benchmem $(PACKAGES) && bash site/tests/run.sh types && \
	  COLUMNBOWL_EDITION=$(abspath $(OUT)) node site/tests/bench.mjs || echo "the measuring failed"; } 2>&1 | tee "$$said"; \
	echo; grep '^budget' "$$said"; ! grep -q '^the measuring failed' "$$said"

# What README.md shows; for people, not a check.
pictures: bind
	bash site/tests/run.sh types
	COLUMNBOWL_EDITION=$(abspath $(OUT)) node site/tests/pictures.mjs .pictures

# The go command fuzzes one target at a time.
fuzz:
	@for package in $(PACKAGES); do \
	  for target in $$(go test -list '^Fuzz' $$package | grep '^Fuzz'); do \
	    echo "$$package $$target"; \
	    go test -run '^$$' -fuzz "^$$target\$$" -fuzztime $(FUZZTIME) -fuzzminimizetime 3s $$package || exit 1; \
	  done; \
	done
	FUZZ=500 node --test site/tests/deskfile.test.mjs

clean:
	rm -rf $(OUT) $(OUT).new $(OUT).old release
