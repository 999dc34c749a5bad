//go:build release

package carried

import _ "embed"

// archive is laid over this folder by build/release when it builds a program;
// there is no such file in the project.
//
//go:embed carried.zip
var archive []byte
