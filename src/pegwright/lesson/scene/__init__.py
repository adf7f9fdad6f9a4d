"""What lies on the loom at each moment, as values to draw: marks, windows, tubes in space, rounds, times."""
