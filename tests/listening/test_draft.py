"""A recording without a pattern becomes a draft in which nothing is invented."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from pegwright.cli import main
from pegwright.listening import Cue, draft_recording
from pegwright.pattern import expand, read_pattern
from testing.listening.recordings import load_recordings
from testing.listening.scoring import plain_move, score_drafts

CLEAR = """[0:02] Hello, this has no name yet. A loom is in front of me.
[0:08] Stretch one blue band from peg A1 to peg A2.
[0:14] Stretch one white band from peg A2 to
[0:16] peg A3. Mind the ferry.
[0:20] A finger of the other hand keeps the bands on peg A3 down.
[0:26] Do that again, four more times.
[0:30] Stretch one blew ban from pegate 2.
"""


def test_only_what_is_said_whole_is_read(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (tmp_path / "a.txt").write_text(CLEAR, "utf-8")
    with pytest.raises(SystemExit):
        main(["listen", str(tmp_path / "a.txt"), str(tmp_path / "new.json"), "--draft", "--json"])
    shown = json.loads(capsys.readouterr().out)
    read = [(round(one["start_s"]), one["text"]) for one in shown["lines"] if one["is_read"]]
    assert read == [
        (8, "Stretch one blue band from peg A1 to peg A2."),
        (14, "Stretch one white band from peg A2 to peg A3."),
    ]
    pattern = read_pattern((tmp_path / "new.json").read_bytes()).pattern
    assert pattern is not None
    assert [plain_move(one.move) for one in expand(pattern).moves] == [
        "place over A1 A2",
        "place over A2 A3",
    ]


def test_nothing_is_invented() -> None:
    """Whatever is read of a recogniser's captions is a move of the piece."""
    taught, read, invented = score_drafts(load_recordings(kept=False))
    assert invented == 0
    assert 5 < read < taught


def test_no_words_at_all_are_a_draft_without_steps() -> None:
    told = draft_recording((Cue(0.0, 1.0, "[Music]"), Cue(1.0, 2.0, "Mind the ferry.")), "en")
    assert [one.is_read for one in told.lines] == [False]
