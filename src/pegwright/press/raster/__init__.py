"""Strokes and letters painted on a canvas of pixels, and pictures made that way."""
