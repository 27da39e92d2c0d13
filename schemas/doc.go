// Package schemas knows how every file that a person writes has to look: it
// holds the JSON Schemas and the one loader, which gives every value its line
// and column and says in plain words what is wrong with it. It must not know
// any chemistry. It is the only importer of the YAML and schema libraries.
package schemas
