"""Paints a lesson: svg, pdf. Decides nothing."""

from pegwright.press.pdf import Paper, handout_pdf
from pegwright.press.svg import step_svg, swatch_svg

__all__ = ["Paper", "handout_pdf", "step_svg", "swatch_svg"]
