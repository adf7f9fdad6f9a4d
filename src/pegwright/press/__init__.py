"""Paints a lesson: svg, pdf, captions, web pages. Decides nothing."""

from pegwright.press.bundle import PARTS, Codec, Part, bundle, lesson_files
from pegwright.press.captions import captions_srt, captions_vtt, chapters_text, chapters_vtt
from pegwright.press.page import page_html
from pegwright.press.pdf import Edition, Paper, handout_pdf, leaf_pdf
from pegwright.press.prompter import prompter_html
from pegwright.press.svg import step_svg, swatch_svg

__all__ = [
    "PARTS",
    "Codec",
    "Edition",
    "Paper",
    "Part",
    "bundle",
    "captions_srt",
    "captions_vtt",
    "chapters_text",
    "chapters_vtt",
    "handout_pdf",
    "leaf_pdf",
    "lesson_files",
    "page_html",
    "prompter_html",
    "step_svg",
    "swatch_svg",
]
