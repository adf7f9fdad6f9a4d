"""Pictures as strokes and letters, which every painter can draw."""
