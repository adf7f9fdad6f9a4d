"""Pictures as strokes and letters, which every kind of painter puts down."""
