"""What Python makes of the built-in pieces, as JSON, for the front end's tests to be held against.

`python -m tests.server.cases` prints it; `frontend/src/cases.ts` runs that.
"""

from __future__ import annotations

import copy
import sys
from typing import Any

import jsonpatch
import msgspec

from pegwright.pattern import PatternBuilder, Rows, expand, write_pattern
from pegwright.server.work_responses import work_response
from pegwright.workshop import example_files, open_pattern, work


def cases() -> dict[str, Any]:
    """Return, for every built-in piece, its moves, its stacks after each, and its fixes carried out."""
    pieces = []
    fixes = []
    for name, path in example_files().items():
        pattern = open_pattern(path).pattern
        assert pattern is not None
        document = msgspec.json.decode(write_pattern(pattern))
        made = work(pattern)
        pieces.append(
            {
                "name": name,
                "document": document,
                "moves": [doing.move for doing in expand(pattern).moves],
                "seen": work_response(made).moves,
                "stacks": [dict(done.after.stacks) for done in made.history.moves],
            }
        )
        for found in made.findings:
            if found.fix:
                patch = [dict(op) for op in found.fix.patch]
                after = jsonpatch.apply_patch(copy.deepcopy(document), patch)
                fixes.append({"before": document, "patch": patch, "after": after})
    return {"pieces": pieces, "fixes": fixes, "mirrored": [_mirrored(n) for n in (0, 1, 3)]}


def _mirrored(rounds: int) -> dict[str, Any]:
    """Return a pattern of motifs in motifs and rounds that move on, mirrored each way, and its moves."""
    m = PatternBuilder("Slack water", Rows(rows=9, pegs=40)).colour("A", "slate", "#445566")
    m.colour("F", "foam", "#f2efe6")
    with m.motif("ripple", n=2), m.repeat("n", pegs=2, rows=1):
        m.place("A", "A1", "B2")
    with m.motif("pair"):
        m.use("ripple", pegs=1)
        m.use("ripple", rows=1, pegs=4, mirror=("pegs",), counts={"n": rounds})
    with m.motif("striped", "x", n=1), m.repeat("n", pegs=1, colours={"y": ("x", "A", "F")}):
        m.place("y", "A1", "B1")
    with m.motif("only"):
        m.use("pair", mirror=("rows",))
    for name in ("ripple", "pair", "only"):
        for mirror in (("rows",), ("pegs",), ("rows", "pegs")):
            m.use(name, rows=3, pegs=20, mirror=mirror)
    with m.repeat(3, pegs=1, colours={"ring": ("F", "A")}):
        m.use("striped", colours={"x": "ring"}, counts={"n": rounds})
    pattern = m.pattern()
    expansion = expand(pattern)
    assert not expansion.findings
    return {
        "document": msgspec.json.decode(write_pattern(pattern)),
        "moves": [doing.move for doing in expansion.moves],
    }


if __name__ == "__main__":
    sys.stdout.buffer.write(msgspec.json.encode(cases()))
