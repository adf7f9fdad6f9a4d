"""Paints a lesson: svg, png, pdf. Decides nothing."""
