"""The finished piece: smoothed tubes, seen as vectors, pixels, a mesh or a photograph."""
