// Package card sets out controls that are not part of a drawn panel as labeled cards in columns: things
// worn and carried, couplings, chocks, decisions. Each card says what it is and shows where it stands.
package card
