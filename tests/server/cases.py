"""What Python makes of the built-in pieces, as JSON, for the front end's tests to be held against.

`python -m tests.server.cases` prints it; `frontend/src/cases.ts` runs that.
"""

from __future__ import annotations

import copy
import sys
from typing import Any

import jsonpatch
import msgspec

from pegwright.pattern import expand, write
from pegwright.server.seen import seen
from pegwright.workshop import example_files, open_pattern, work


def cases() -> dict[str, Any]:
    """Return, for every built-in piece, its moves, its stacks after each, and its fixes carried out."""
    pieces = []
    fixes = []
    for name, path in example_files().items():
        pattern = open_pattern(path).pattern
        assert pattern is not None
        document = msgspec.json.decode(write(pattern))
        made = work(pattern)
        pieces.append(
            {
                "name": name,
                "document": document,
                "moves": [doing.move for doing in expand(pattern).doings],
                "seen": seen(made).moves,
                "stacks": [dict(done.after.stacks) for done in made.history.done],
            }
        )
        for found in made.findings:
            if found.fix:
                patch = [dict(op) for op in found.fix.patch]
                after = jsonpatch.apply_patch(copy.deepcopy(document), patch)
                fixes.append({"before": document, "patch": patch, "after": after})
    return {"pieces": pieces, "fixes": fixes}


if __name__ == "__main__":
    sys.stdout.buffer.write(msgspec.json.encode(cases()))
