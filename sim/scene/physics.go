package scene

// Physics is the number of the model. It goes up whenever a change makes the same actions end in
// another state: a recording made under another number can be looked at, but not be proved by replay.
const Physics = 18
