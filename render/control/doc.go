// Package control draws the things that hands work and turns what hands do into positions: each kind
// is one type in one file, with its still art, its moving art, its hit area and what a drag means.
//
// It acts on nothing: it gives a share of travel, and whoever holds the widget tells the world.
package control
