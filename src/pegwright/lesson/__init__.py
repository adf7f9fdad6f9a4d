"""What to show and what to say, page by page."""

from pegwright.lesson.picture import Mark, Picture, Window
from pegwright.lesson.plan import plan
from pegwright.lesson.sheet import Hand, Lesson, Phase, Step
from pegwright.lesson.verdict import Fit, Snap, Verdict
from pegwright.lesson.words import languages

__all__ = [
    "Fit",
    "Hand",
    "Lesson",
    "Mark",
    "Phase",
    "Picture",
    "Snap",
    "Step",
    "Verdict",
    "Window",
    "languages",
    "plan",
]
