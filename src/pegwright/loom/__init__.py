"""The machine: pegs, stacks of loops, moves, refusals, history."""
