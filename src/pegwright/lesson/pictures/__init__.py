"""The pictures of a step: the loom from above, one stack from the side, many rounds at once."""
