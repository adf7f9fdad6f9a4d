"""Where the bands come to rest: elastic rods in contact."""
