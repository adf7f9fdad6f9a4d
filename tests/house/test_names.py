"""A function is a verb with its object, or the noun it returns; it is never a bare participle."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
IRREGULAR = frozenset(
    [
        "begun",
        "bent",
        "bound",
        "broken",
        "brought",
        "built",
        "caught",
        "chosen",
        "drawn",
        "driven",
        "fallen",
        "felt",
        "found",
        "given",
        "gone",
        "grown",
        "heard",
        "held",
        "hidden",
        "hung",
        "kept",
        "known",
        "laid",
        "left",
        "lent",
        "lost",
        "made",
        "meant",
        "met",
        "paid",
        "said",
        "seen",
        "sent",
        "shown",
        "spoken",
        "spoilt",
        "spun",
        "struck",
        "swept",
        "taken",
        "taught",
        "thought",
        "told",
        "thrown",
        "torn",
        "understood",
        "won",
        "worn",
        "wound",
        "woven",
        "written",
    ]
)
VERBS_AND_NOUNS = frozenset(
    ["embed", "exceed", "feed", "heed", "need", "proceed", "seed", "shed", "speed", "succeed"]
)


def is_participle(name: str) -> bool:
    """Say whether a name is one bare participle, as `kept` or `_measured`."""
    word = name.strip("_")
    if "_" in word or not word.islower() or word in VERBS_AND_NOUNS:
        return False
    return word in IRREGULAR or (word.endswith("ed") and len(word) > 3)


def python_functions(file: Path) -> Iterator[str]:
    """Yield the functions and methods of a Python file; a property is a fact and may be told as one."""
    for node in ast.walk(ast.parse(file.read_text("utf-8"))):
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
            decorators = {ast.unparse(one) for one in node.decorator_list}
            if not decorators & {"property", "cached_property", "functools.cached_property"}:
                yield node.name


def front_end_functions(file: Path) -> Iterator[str]:
    """Yield the functions of a TypeScript or Svelte file that have a name of their own."""
    text = file.read_text("utf-8")
    yield from re.findall(r"\bfunction\s+(\w+)", text)
    yield from re.findall(r"\bconst\s+(\w+)\s*=\s*(?:async\s*)?\([^()]*\)\s*(?::[^=]+)?=>", text)


@pytest.mark.parametrize("name", ["kept", "_told", "measured", "__shown"])
def test_a_bare_participle_is_seen(name: str) -> None:
    assert is_participle(name)


@pytest.mark.parametrize("name", ["keep_fixes", "seed", "thread", "told_once", "isReady", "red"])
def test_a_verb_or_a_noun_is_not_one(name: str) -> None:
    assert not is_participle(name)


def test_no_function_is_a_bare_participle() -> None:
    found = [
        f"{file.relative_to(ROOT)}: {name}"
        for file in sorted((ROOT / "src").rglob("*.py"))
        for name in python_functions(file)
        if is_participle(name)
    ]
    found += [
        f"{file.relative_to(ROOT)}: {name}"
        for suffix in ("ts", "svelte")
        for file in sorted((ROOT / "frontend" / "src").rglob(f"*.{suffix}"))
        for name in front_end_functions(file)
        if is_participle(name)
    ]
    assert found == []
