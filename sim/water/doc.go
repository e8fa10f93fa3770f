// Package water gives properties of water as functions of temperature: vapor pressure, boiling point,
// density, heat capacity. They use square roots and products only, so that every processor gives the
// same bits.
package water
