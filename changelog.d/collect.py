"""Move the sentences of changelog.d into CHANGELOG.md: `python changelog.d/collect.py VERSION`."""

from __future__ import annotations

import datetime
import sys
from pathlib import Path

FOLDER = Path(__file__).parent
LOG = FOLDER.parent / "CHANGELOG.md"
TITLE = "# Changelog\n"


def main(version: str) -> None:
    """Write the release's section above those of older ones, and remove the fragments it is made of."""
    fragments = sorted(FOLDER.glob("*.md"))
    sentences = [line for each in fragments for line in each.read_text("utf-8").splitlines() if line.strip()]
    older = LOG.read_text("utf-8").removeprefix(TITLE) if LOG.exists() else ""
    day = datetime.datetime.now(tz=datetime.UTC).date()
    section = "".join(f"- {sentence}\n" for sentence in sentences)
    LOG.write_text(f"{TITLE}\n## {version}, {day}\n\n{section}{older}", "utf-8")
    for each in fragments:
        each.unlink()


if __name__ == "__main__":
    main(*sys.argv[1:])
