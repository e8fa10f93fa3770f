// Package ground is the street plan: fire, hydrant, apparatus and hose as they lie, the spots one can
// walk to, and cards for what is in reach of the spot where one stands.
package ground
