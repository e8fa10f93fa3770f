// Package judge turns rules and what happened into findings, and findings into a score.
//
// It watches a scene's truth and actions and never changes the scene; outcome rules put a forked copy
// through a test.
package judge
