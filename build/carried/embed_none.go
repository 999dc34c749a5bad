//go:build !release

package carried

// archive is empty: a program that is built in the project takes the content
// from its folder.
var archive []byte
