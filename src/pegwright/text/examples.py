"""An example of every line that a step may be, to be shown beside one that says nothing."""

from __future__ import annotations

from difflib import get_close_matches

from pegwright.finding import Phrase, phrase

EXAMPLES = {
    "place": "place A over A1 A2",
    "wind": "wind A on B3 3 turns",
    "turn": "turn",
    "hook": "hook A3 loop 1 to A2",
    "lift": "lift A3 loop 1",
    "transfer": "transfer A3 to A2",
    "hang": "hang A 3 turns",
    "slide": "slide A3 loop 1 to A2",
    "bind": "bind A through A1 as end",
    "put": "put end on A3",
    "extend": "extend end by 4 A",
    "knot": "knot A1 B1",
    "clip": "clip end A13",
    "repeat": "repeat 5: pegs 2",
    "use": "use outline: pegs 2",
}


def nearest_example(word: str) -> Phrase:
    """Return the hint that shows the line whose first word is like this one, or all first words."""
    near = get_close_matches(word[:30], EXAMPLES, n=1)
    return (
        phrase("write-like", example=EXAMPLES[near[0]])
        if near
        else phrase("write-step", choices=tuple(EXAMPLES))
    )
