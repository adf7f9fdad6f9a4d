"""Every code is worded, documented and used; every wording reads as it should."""

from __future__ import annotations

import ast
import re
from pathlib import Path
from string import Formatter

import pytest

from pegwright.finding import CATALOGUE, Finding, finding
from pegwright.finding.summing import sum_up

ROOT = Path(__file__).parents[2]
DOCS = (ROOT / "docs" / "findings.md").read_text(encoding="utf-8")
RAISERS = {"finding", "find", "_NoError", "Refused", "refuse"}


def entries() -> dict[str, tuple[str, str]]:
    """Split docs/findings.md into {code: (severity, text)}."""
    parts = re.split(r"^### `([a-z-]+)` · (\w+)$", DOCS, flags=re.M)
    return {
        code: (severity, text)
        for code, severity, text in zip(parts[1::3], parts[2::3], parts[3::3], strict=True)
    }


def sources() -> dict[Path, ast.Module]:
    files = (ROOT / "src").rglob("*.py")
    return {p: ast.parse(p.read_text(encoding="utf-8")) for p in files if p.name != "catalogue.py"}


def test_every_code_is_documented_once_and_no_other() -> None:
    assert entries().keys() == CATALOGUE.keys()
    assert len(re.findall(r"^### ", DOCS, flags=re.M)) == len(CATALOGUE)


@pytest.mark.parametrize("code", sorted(CATALOGUE))
def test_an_entry_says_what_why_and_how(code: str) -> None:
    severity, text = entries()[code]
    assert severity == CATALOGUE[code].severity
    what, _, rest = text.partition("**Why it matters:**")
    why, _, rest = rest.partition("**How to mend it:**")
    how, _, example = rest.partition("**Example:**")
    assert all(len(part.strip()) > 10 for part in (what, why, how, example))


def test_every_code_that_is_raised_is_worded() -> None:
    for path, tree in sources().items():
        for node in ast.walk(tree):
            if isinstance(node, ast.Call) and node.args and isinstance(node.args[0], ast.Constant):
                name = getattr(node.func, "id", getattr(node.func, "attr", ""))
                code = node.args[0].value
                if name in RAISERS and isinstance(code, str) and re.fullmatch(r"[a-z]+(-[a-z]+)+", code):
                    assert code in CATALOGUE, f"{code} in {path.name}"


def test_every_code_that_is_worded_is_used() -> None:
    used = {
        node.value
        for tree in sources().values()
        for node in ast.walk(tree)
        if isinstance(node, ast.Constant) and isinstance(node.value, str)
    }
    assert CATALOGUE.keys() <= used


@pytest.mark.parametrize("code", sorted(CATALOGUE))
def test_lower_case_and_no_full_stop(code: str) -> None:
    entry = CATALOGUE[code]
    for text in (entry.message, entry.hint):
        assert text
        assert not text.endswith(".")
        assert not text[0].isupper()
        facts = [name for _, name, _, _ in Formatter().parse(text) if name is not None]
        assert all(name.isidentifier() for name in facts)


def test_how_findings_read() -> None:
    one = finding("band-not-proved", band=14, colour="B", reason="it is too tangled to decide")
    assert one.message == (
        "band 14 (B) could be neither proved held nor proved free: it is too tangled to decide"
    )
    two = finding("band-falls", band=3, colour="A", reason="nothing passes through any of its loops")
    assert two.message == "band 3 (A) falls off: nothing passes through any of its loops"
    assert (one.severity, two.severity) == ("warning", "error")
    three = finding("rest-not-reached", iterations=400, drop=0.0123)
    assert (
        three.message
        == "the piece had not come to rest after 400 steps: forces are at 1.23% of what they were"
    )
    four = finding("rest-interrupted", iterations=7)
    assert four.message == "the work was stopped after 7 steps; the shape is the one reached so far"
    five = finding("bands-drawn-crossing", gap_mm=0.0021)
    assert five.message == "a strand of this band is drawn through another, with 0.002 mm between them"


def test_facts_are_text_and_never_a_template() -> None:
    """A hostile name with braces in it stays as it is."""
    one = finding("motif-unknown", name="{known}{0.__class__}", known="none")
    assert one.message == "there is no motif called {known}{0.__class__}"


def test_long_runs_are_summed_up() -> None:
    many = [finding("peg-double", peg=f"A{k}") for k in range(30)] + [finding("no-finish")]
    short = sum_up(many, most=4)
    assert [f.code for f in short] == ["peg-double"] * 4 + ["no-finish", "more-of-the-same"]
    assert short[-1].facts == {"count": 26, "of": "peg-double"}
    assert sum_up(many[:20]) == tuple(many[:20])


def test_what_is_summed_up_twice_is_counted_once() -> None:
    many = [finding("peg-double", peg=f"A{k}") for k in range(30)]
    again = sum_up((*sum_up(many, most=4), *sum_up(many[:7], most=4)), most=4)
    assert [f.code for f in again] == ["peg-double"] * 4 + ["more-of-the-same"]
    assert again[-1].facts == {"count": 33, "of": "peg-double"}


def test_sum_up_keeps_the_order_of_what_it_keeps() -> None:
    some: list[Finding] = [finding("peg-double", peg=str(k)) for k in range(3)]
    assert sum_up(some) == tuple(some)
