// Package scene is the world and the people who act on their own, as one thing: stepped together,
// hashed together, saved and copied together.
package scene
