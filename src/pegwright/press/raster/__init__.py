"""Strokes and letters on a canvas of pixels, and the pictures made so."""
