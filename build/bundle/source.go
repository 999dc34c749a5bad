package bundle

import (
	"fmt"
	"io/fs"
	"path"
	"strings"

	"github.com/evanw/esbuild/pkg/api"
)

// namespace marks files of the site, so that esbuild never looks on the disk.
const namespace = "site"

// fromFS lets esbuild read from an fs.FS.
func fromFS(fsys fs.FS) api.Plugin {
	return api.Plugin{Name: namespace, Setup: func(b api.PluginBuild) {
		b.OnResolve(api.OnResolveOptions{Filter: ".*"}, func(a api.OnResolveArgs) (api.OnResolveResult, error) {
			return resolve(fsys, a)
		})
		b.OnLoad(api.OnLoadOptions{Filter: ".*", Namespace: namespace}, func(a api.OnLoadArgs) (api.OnLoadResult, error) {
			return load(fsys, a.Path)
		})
	}}
}

// resolve finds the file that an import names.
func resolve(fsys fs.FS, a api.OnResolveArgs) (api.OnResolveResult, error) {
	if a.Kind == api.ResolveCSSURLToken {
		return api.OnResolveResult{Path: a.Path, External: true}, nil
	}
	name := path.Clean(a.Path)
	if a.Kind != api.ResolveEntryPoint {
		if !strings.HasPrefix(a.Path, "./") && !strings.HasPrefix(a.Path, "../") && a.Kind != api.ResolveCSSImportRule {
			return api.OnResolveResult{}, fmt.Errorf("%q is not a file of the site: the scripts use no package, write ./%s for a file beside this one", a.Path, a.Path)
		}
		name = path.Join(path.Dir(a.Importer), a.Path)
	}
	for _, n := range []string{name, name + ".ts", strings.TrimSuffix(name, ".js") + ".ts"} {
		if info, err := fs.Stat(fsys, n); err == nil && !info.IsDir() {
			return api.OnResolveResult{Path: n, Namespace: namespace}, nil
		}
	}
	return api.OnResolveResult{}, fmt.Errorf("there is no file %s in the site", name)
}

var loaders = map[string]api.Loader{".ts": api.LoaderTS, ".json": api.LoaderJSON, ".css": api.LoaderCSS, ".svg": api.LoaderText}

func load(fsys fs.FS, name string) (api.OnLoadResult, error) {
	loader, ok := loaders[path.Ext(name)]
	if !ok {
		return api.OnLoadResult{}, fmt.Errorf("%s cannot be bundled: scripts are .ts, styles .css, words .json, signs .svg", name)
	}
	data, err := fs.ReadFile(fsys, name)
	if err != nil {
		return api.OnLoadResult{}, err
	}
	text := string(data)
	return api.OnLoadResult{Contents: &text, Loader: loader}, nil
}
