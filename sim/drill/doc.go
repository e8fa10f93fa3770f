// Package drill is the type a drill file becomes: setup, variants, steps, rules, crew, scale.
package drill
