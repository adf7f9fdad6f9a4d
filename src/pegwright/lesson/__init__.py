"""What to show and what to say, page by page, second by second."""

from pegwright.lesson.captions import Caption, captions
from pegwright.lesson.edit import edit
from pegwright.lesson.filming import filming, script_leaf
from pegwright.lesson.frame import Still, stills
from pegwright.lesson.kit import kit
from pegwright.lesson.leaf import Grid, Leaf
from pegwright.lesson.mishap import Teller, move_label
from pegwright.lesson.palette import check_palette
from pegwright.lesson.picture import Mark, Picture, Window
from pegwright.lesson.plan import plan
from pegwright.lesson.script import Script, script
from pegwright.lesson.sheet import Hand, Lesson, Phase, Step
from pegwright.lesson.storyboard import Storyboard, clipped, excerpt, storyboard
from pegwright.lesson.times import Pace, motif_moves, timed
from pegwright.lesson.verdict import UNASKED, Finish, Missing, Snap, Verdict
from pegwright.lesson.words import Units, Words, languages

__all__ = [
    "UNASKED",
    "Caption",
    "Finish",
    "Grid",
    "Hand",
    "Leaf",
    "Lesson",
    "Mark",
    "Missing",
    "Pace",
    "Phase",
    "Picture",
    "Script",
    "Snap",
    "Step",
    "Still",
    "Storyboard",
    "Teller",
    "Units",
    "Verdict",
    "Window",
    "Words",
    "captions",
    "check_palette",
    "clipped",
    "edit",
    "excerpt",
    "filming",
    "kit",
    "languages",
    "motif_moves",
    "move_label",
    "plan",
    "script",
    "script_leaf",
    "stills",
    "storyboard",
    "timed",
]
