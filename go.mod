module columnbowl

go 1.26.8

require (
	github.com/alecthomas/chroma/v2 v2.27.0
	github.com/evanw/esbuild v0.28.2
	github.com/kljensen/snowball v0.10.0
	github.com/rogpeppe/go-internal v1.16.0
	github.com/tetratelabs/wazero v1.12.0
	github.com/yuin/goldmark v1.8.7
	go.yaml.in/yaml/v3 v3.0.6
	pgregory.net/rapid v1.3.0
)

require (
	github.com/dlclark/regexp2/v2 v2.2.1 // indirect
	golang.org/x/sys v0.49.0 // indirect
	golang.org/x/tools v0.52.0 // indirect
)
