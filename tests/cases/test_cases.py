"""A document for each finding: `CODE.json` beside this file gives the finding CODE and no other.

`CODE.stash.json` is a stash, `CODE.pegwright` a text. What a document cannot help giving as well
stands in `ALSO`.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any

import jsonpatch
import msgspec
import pytest

from pegwright.finding import CATALOGUE, Finding
from pegwright.loom import history
from pegwright.pattern import MAX_BYTES, read_pattern
from tests.cases.run import HERE, findings_of, findings_of_stash

ALSO = {
    "laid-after-clip": {"band-not-worked", "band-falls"},
    "band-falls": {"loop-left"},
    "band-not-worked": {"band-falls"},
    "catches-one": {"loop-left", "band-falls"},
    "loop-left": {"band-falls"},
    "more-of-the-same": {"colour-unused"},
    "no-finish": {"band-falls"},
    "stack-full": {"band-not-worked", "band-falls", "more-of-the-same", "no-finish", "stack-too-high"},
    "start-not-held": {"band-falls"},
    "too-many-passes": {"band-not-worked", "band-falls", "no-finish"},
}
NO_DOCUMENT = {
    "too-large": "made below, being large",
    "sentence-unread": "of a maker's words, see the tests of reading",
    "words-leave-open": "of a maker's words, see the tests of reading",
    "text-too-long": "of a maker's words, see the tests of reading",
    "no-steps-read": "of a maker's words, see the tests of reading",
    "language-unread": "of a maker's words, see the tests of reading",
    "steps-missing": "of a maker's words, see the tests of reading",
    "captions-too-large": "of a recording's captions, see the tests of listening",
    "captions-bad-bytes": "of a recording's captions, see the tests of listening",
    "captions-empty": "of a recording's captions, see the tests of listening",
    "cue-unreadable": "of a recording's captions, see the tests of listening",
    "cue-backward": "of a recording's captions, see the tests of listening",
    "cues-overlap": "of a recording's captions, see the tests of listening",
    "recogniser-missing": "of a recording, see the tests of listening",
    "model-missing": "of a recording, see the tests of listening",
    "model-english-only": "of a recording, see the tests of listening",
    "sound-unreadable": "of a recording, see the tests of listening",
    "recording-too-long": "of a recording's captions, see the tests of listening",
    "chapter-not-heard": "of a recording's captions, see the tests of listening",
    "picture-unreadable": "of a picture that becomes a mat, see the tests of variants",
    "picture-too-large": "of a picture that becomes a mat, see the tests of variants",
    "picture-all-clear": "of a picture that becomes a mat, see the tests of variants",
    "picture-clear-parts": "of a picture that becomes a mat, see the tests of variants",
    "picture-moves": "of a picture that becomes a mat, see the tests of variants",
    "picture-one-colour": "of a picture that becomes a mat, see the tests of variants",
    "colour-runs-short": "of a picture that becomes a mat, see the tests of variants",
    "variant-left-out": "of variants, see the tests of the workshop",
    "colourway-alike": "of variants, see the tests of the workshop",
    "colourway-runs-short": "of variants, see the tests of the workshop",
    "recording-contradicts": "of a recording's captions, see the tests of listening",
    "recording-unclear": "of a recording's captions, see the tests of listening",
    "too-many-refused": "made by the fuzz tests, being large",
    "file-unreadable": "there is no document; see the workshop's tests",
    "bands-drawn-crossing": "of the shape at rest, which has tests of its own",
    "bands-lie-loose": "of the shape at rest, which has tests of its own",
    "nothing-hangs-together": "of the shape at rest, which has tests of its own",
    "length-impossible": "of the shape at rest, which has tests of its own",
    "rests-otherwise": "of the shape at rest, which has tests of its own",
    "rest-not-reached": "of the shape at rest, which has tests of its own",
    "rest-interrupted": "of the shape at rest, which has tests of its own",
    "losses-left-out": "of a question that is asked apart, see the tests of the commands",
    "order-not-found": "of a question that is asked apart, see the tests of the planner",
    "holds-already": "of a question that is asked apart, see the tests of the planner",
    "fall-with-it": "of a question that is asked apart, see the tests of mending",
    "mend-not-found": "of a question that is asked apart, see the tests of mending",
    "no-simpler-order": "of a question that is asked apart, see the tests of the planner",
    "order-pinned": "of a question that is asked apart, see the tests of the planner",
    "order-none": "of a question that is asked apart, see the tests of the planner",
    "nothing-to-work": "of a question that is asked apart, see the tests of the planner",
    "wrist-unreadable": "of a wrist told by hand, see the tests of fit",
    "wrist-nonsense": "of a wrist told by hand, see the tests of fit",
    **dict.fromkeys(
        ("girth-unreadable", "girth-nonsense", "girth-unusual", "girth-neck", "girth-finger"),
        "of a girth told by hand, see the tests of fit",
    ),
    "wrist-unusual": "of a wrist told by hand, see the tests of fit",
    "wrist-too-young": "of a wrist told by hand, see the tests of fit",
    "measure-nonsense": "of measurements, see the tests of calibration",
    "measure-few": "of measurements, see the tests of calibration",
    "density-odd": "of measurements, see the tests of calibration",
    "modulus-odd": "of measurements, see the tests of calibration",
    "moduli-tangled": "of measurements, see the tests of calibration",
    "stretch-misfit": "of measurements, see the tests of calibration",
    "fit-loose": "of the finished piece on a wrist, see the tests of fit",
    "fit-tight": "of the finished piece on a wrist, see the tests of fit",
    "fit-hand": "of the finished piece on a wrist, see the tests of fit",
    "fit-unmeasured": "of the finished piece on a wrist, see the tests of fit",
    "fit-not-closed": "of the finished piece on a wrist, see the tests of the commands",
    "fit-falls-apart": "of the finished piece on a wrist, see the tests of the commands",
    "extension-nowhere": "of the finished piece on a wrist, see the tests of fit",
    "stretch-curve-nonsense": "of the finished piece on a wrist, see the tests of fit",
    "gauge-nonsense": "of the finished piece on a wrist, see the tests of fit",
    "band-near-breaking": "of bands under force, see the tests of fit",
    "not-a-slip-table": "of a teacher's table of slips, see the tests of the rehearsal",
    "slip-class-unknown": "of a teacher's table of slips, see the tests of the rehearsal",
    "slip-unknown": "of a teacher's table of slips, see the tests of the rehearsal",
    "contact-missing": "of the lesson, see the tests of the editor's check",
    "licence-missing": "of the lesson, see the tests of the editor's check",
    "about-missing": "of the lesson, see the tests of the editor's check",
    "level-low": "of the lesson, see the tests of the editor's check",
    "motif-unused": "of the lesson, see the tests of the editor's check",
    "repeat-of-none": "of the lesson, see the tests of the editor's check",
    "side-named": "of the lesson, see the tests of the editor's check",
    "term-mixed": "of the lesson, see the tests of the editor's check",
    "text-peg-unknown": "of the lesson, see the tests of the editor's check",
    "text-peg-moves": "of the lesson, see the tests of the editor's check",
    "text-step-unknown": "of the lesson, see the tests of the editor's check",
    "text-hard": "of the lesson, see the tests of the editor's check",
    "text-length-wrong": "of the lesson, see the planted faults of the editor's check",
    "text-time-wrong": "of the lesson, see the planted faults of the editor's check",
    "text-unsafe": "of the lesson, see the planted faults of the editor's check",
    "text-misspelt": "of the lesson, see the planted faults of the editor's check",
    "text-vague": "of the lesson, see the planted faults of the editor's check",
    "text-loop-wrong": "of the lesson, see the planted faults of the editor's check",
    "text-colour-wrong": "of the lesson, see the planted faults of the editor's check",
    "colour-name-twice": "of the lesson, see the planted faults of the editor's check",
    "clip-unwarned": "of the lesson, see the planted faults of the editor's check",
    "translation-missing": "of the lesson in a language, see the tests of translations",
    "translation-outdated": "of the lesson in a language, see the tests of translations",
    "colours-alike": "of the colours, see the tests of the palette",
    "lesson-disagrees": "of the lesson, see the tests of the editor's check",
    "band-not-proved": "depends on what the prover cannot do; its wording is tested with the others",
}
CASES = sorted([*HERE.glob("*.json"), *HERE.glob("*.pegwright")])


def code_of(path: Path) -> str:
    return path.name.partition(".")[0]


def findings_in(path: Path, monkeypatch: pytest.MonkeyPatch) -> tuple[Finding, ...]:
    if path.name == "too-many-passes.json":
        monkeypatch.setattr(history, "MAX_PASSES", 5)  # the true bound would take a document that works long
    if path.name.endswith(".stash.json"):
        return findings_of_stash(path.read_bytes())
    return findings_of(path.read_bytes())


@pytest.mark.parametrize("path", CASES, ids=code_of)
def test_the_document_gives_its_finding(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    found = findings_in(path, monkeypatch)
    code = code_of(path)
    assert {f.code for f in found} == {code} | ALSO.get(code, set())
    for one in found:
        assert one.message
        assert one.hint
        assert one.severity == CATALOGUE[one.code].severity


def test_every_code_has_a_document() -> None:
    documents = {code_of(path) for path in CASES}
    assert documents | NO_DOCUMENT.keys() == CATALOGUE.keys()
    assert not documents & NO_DOCUMENT.keys()
    tests = "".join(
        p.read_text(encoding="utf-8") for p in HERE.parent.rglob("test_*.py") if p != Path(__file__)
    )
    for code in NO_DOCUMENT.keys() - {"too-large"}:
        assert f'"{code}"' in tests


def test_too_large() -> None:
    assert [f.code for f in findings_of(b" " * (MAX_BYTES + 1))] == ["too-large"]


MENDED = {
    "channel-opens-away",
    "band-kind-twice",
    "band-kind-unknown",
    "catches-more",
    "catches-one",
    "colour-not-listed",
    "colour-unused",
    "letter-twice",
    "loop-dragged",
    "no-finish",
    "start-not-held",
    "stated-count-wrong",
    "text-count-wrong",
}


@pytest.mark.parametrize("code", sorted(MENDED))
def test_the_fix_mends_it(code: str) -> None:
    """The patch is carried out by a library of its own; the finding is then gone."""
    data = (HERE / f"{code}.json").read_bytes()
    before = [f for f in findings_of(data) if f.code == code]
    for one in before:
        assert one.fix is not None
        mended: Any = jsonpatch.apply_patch(msgspec.json.decode(data), list(one.fix.patch))
        text = msgspec.json.encode(mended)
        assert read_pattern(text).pattern is not None
        after = findings_of(text)
        assert sum(f.code == code for f in after) == len(before) - 1
        # A second colour under a new letter is then listed and not used; nothing else may come of a fix.
        worse = {f.code for f in after} - {f.code for f in findings_of(data)} - {"colour-unused"}
        assert not worse


def test_no_other_case_offers_a_fix(monkeypatch: pytest.MonkeyPatch) -> None:
    for path in CASES:
        offered = {f.code for f in findings_in(path, monkeypatch) if f.fix is not None}
        assert offered <= MENDED
