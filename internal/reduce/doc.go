// Package reduce makes few modes of a network that conducts heat: nodes with or without a capacity,
// conductances between them, temperatures given from outside and heats that enter. What is left out follows its inputs at once, so that
// steady heat stays exact, every mode decays, heat passes there and back alike, and the heat that enters is the heat that is held more.
//
// Checked against: the exact cooling of one store; the exponential of the network's own matrix; gonum's solution at rest of
// random networks, and their balances, few modes and all; a house of two rooms through a year; components attached beside the
// same put together in one piece.
//
// Left out: conductances that change (join them at the step's end, by the answers of heats); flows of air from node to
// node, which are not symmetric; networks that reach no given temperature.
package reduce
