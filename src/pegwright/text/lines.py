"""The lines of a text as a tree: what is indented more belongs to the line above it."""

from __future__ import annotations

from dataclasses import dataclass, field

from pegwright.finding import Phrase, phrase

MAX_LEVELS = 100
TAB = 8


class LineFault(Exception):  # noqa: N818 - a fault of the text, not of the program
    """What is wrong with a line: the reason, what to do about it, and where."""

    def __init__(self, reason: Phrase, hint: Phrase, line: int, column: int) -> None:
        super().__init__(reason)
        self.reason, self.hint, self.line, self.column = reason, hint, line, column


@dataclass
class Line:
    """A line without its indent: line and column count from 1; `inner` are the lines that belong to it."""

    text: str
    number: int
    column: int
    inner: list[Line] = field(default_factory=list)

    def fault(self, reason: Phrase, hint: Phrase, offset: int = 0) -> LineFault:
        """Return a fault of this line, so many characters from its first."""
        return LineFault(reason, hint, self.number, self.column + offset)


def line_tree(text: str) -> tuple[list[Line], list[LineFault]]:
    """Return the outermost lines with all that belongs to them, and the lines that belong nowhere.

    Blank lines and those that begin with # are left out. A line that begins with | is text as it stands.
    """
    top: list[Line] = []
    faults: list[LineFault] = []
    levels: list[tuple[int, list[Line]]] = [(0, top)]
    for number, raw in enumerate(text.split("\n"), start=1):
        shown = raw.removesuffix("\r")
        bare = shown.lstrip(" \t")
        if not bare or bare.isspace() or bare.startswith("#"):
            continue
        lead = shown[: len(shown) - len(bare)]
        indent = len(lead.expandtabs(TAB))
        line = Line(bare if bare.startswith("|") else bare.rstrip(), number, len(lead) + 1)
        if indent > levels[-1][0] and levels[-1][1]:
            if len(levels) > MAX_LEVELS:
                faults.append(line.fault(phrase("nested-deeply"), phrase("write-level")))
                continue
            levels.append((indent, levels[-1][1][-1].inner))
        while indent < levels[-1][0] and len(levels) > 1:
            levels.pop()
        if indent != levels[-1][0]:
            faults.append(line.fault(phrase("line-between-levels"), phrase("write-level")))
        levels[-1][1].append(line)
    return top, faults
