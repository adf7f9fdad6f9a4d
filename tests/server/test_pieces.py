"""Pieces on the shelf: opened, saved, kept, never lost, never outside the folder."""

from __future__ import annotations

import errno
import json
import os
import random
import tempfile
from pathlib import Path
from typing import Any
from urllib.parse import quote

import pytest
from hypothesis import given, strategies as st

from pegwright.pattern import read_pattern
from pegwright.server.folder import ChangedError, Folder, NoPieceError
from pegwright.text import read_pattern_text, write_pattern_text
from tests.server.conftest import Client

Document = dict[str, Any]


def test_a_piece_goes_round(studio: Client, folder: Path, chain: Document) -> None:
    """What is laid on the shelf lies there as a pattern file and is opened again as it was."""
    saved = studio.post("/api/pieces", {"document": chain}).json()
    assert saved["name"] == "slack-chain"
    reading = read_pattern((folder / "slack-chain.json").read_bytes())
    assert reading.pattern is not None
    opened = studio.get("/api/pieces/slack-chain").json()
    assert opened["document"] == chain
    assert opened["edition"] == saved["edition"]
    [shelved] = studio.get("/api/pieces").json()["pieces"]
    assert (shelved["title"], shelved["bands"], shelved["readable"]) == ("Slack chain", 7, True)
    assert len(shelved["glance"]["pegs"]) == 7


def test_two_pages_never_overwrite_each_other(studio: Client, chain: Document) -> None:
    """The second page to save from one edition is told so, and the first one's work stays."""
    saved = studio.post("/api/pieces", {"document": chain}).json()
    one, other = ({**chain, "title": title} for title in ("One", "Other"))
    first = studio.put("/api/pieces/slack-chain", {"document": one, "edition": saved["edition"]})
    second = studio.put("/api/pieces/slack-chain", {"document": other, "edition": saved["edition"]})
    assert (first.status_code, second.status_code) == (200, 409)
    assert studio.get("/api/pieces/slack-chain").json()["document"]["title"] == "One"


def test_a_save_that_was_written_but_not_answered_for_is_sent_again(studio: Client, chain: Document) -> None:
    """A studio killed between the two leaves its page in doubt: the same once more is no change."""
    saved = studio.post("/api/pieces", {"document": chain}).json()
    one = {"document": {**chain, "title": "One"}, "edition": saved["edition"]}
    first, again = (studio.put("/api/pieces/slack-chain", one) for _ in range(2))
    assert (again.status_code, again.json()) == (200, first.json())
    newer = {"document": {**chain, "title": "Newer"}, "edition": again.json()["edition"]}
    assert studio.put("/api/pieces/slack-chain", newer).status_code == 200
    assert studio.put("/api/pieces/slack-chain", one).status_code == 409


def test_a_change_by_another_program_is_seen(studio: Client, folder: Path, chain: Document) -> None:
    """A file that was changed on disk is not overwritten either."""
    saved = studio.post("/api/pieces", {"document": chain}).json()
    (folder / "slack-chain.json").write_text(json.dumps({**chain, "title": "By hand"}))
    answer = studio.put("/api/pieces/slack-chain", {"document": chain, "edition": saved["edition"]})
    assert answer.status_code == 409


def test_new_pieces_take_free_names(studio: Client, chain: Document) -> None:
    """Pieces of one title get names of their own."""
    names = [studio.post("/api/pieces", {"document": chain}).json()["name"] for _ in range(3)]
    assert names == ["slack-chain", "slack-chain-2", "slack-chain-3"]


@pytest.mark.parametrize(
    "title", ["../../etc/passwd", "...", "¡Olé!", "a" * 200, "\u202e\u0000x", "CON", " . "]
)
def test_any_title_makes_a_safe_name(studio: Client, folder: Path, chain: Document, title: str) -> None:
    """Whatever the title, the file lies in the folder, and its text comes back literally."""
    answer = studio.post("/api/pieces", {"document": {**chain, "title": title}})
    assert answer.status_code == 201
    name = answer.json()["name"]
    assert (folder / f"{name}.json").is_file()
    assert studio.get(f"/api/pieces/{quote(name)}").json()["document"]["title"] == title


ROUTES = ("/api/pieces/{}", "/api/pieces/{}/versions", "/api/pieces/x/versions/{}")


@pytest.mark.parametrize(
    "name",
    ["../secret", "..", ".hidden", "a/b", "a\\b", "/etc/passwd", "link", "a\u0000b", "..%2fsecret"],
)
def test_paths_stay_in_the_folder(studio: Client, folder: Path, name: str, chain: Document) -> None:
    """No name leads out of the folder: neither upwards, nor by a link, nor by odd characters."""
    secret = folder.parent / "secret.json"
    secret.write_text(json.dumps(chain))
    (folder / "link.json").symlink_to(secret)
    for route in ROUTES:
        answer = studio.get(route.format(quote(name, safe="")))
        assert answer.status_code in (400, 404, 405) or answer.json() == []
    answer = studio.put(
        f"/api/pieces/{quote(name, safe='')}", {"document": {**chain, "title": "no"}, "edition": "x"}
    )
    assert answer.status_code in (400, 404, 405, 409)
    assert json.loads(secret.read_text())["title"] == "Slack chain"
    assert studio.get("/api/pieces").json()["pieces"] == []


def test_no_pattern_is_never_saved(studio: Client, folder: Path, chain: Document) -> None:
    """A document that is no pattern is refused with findings, and the file stays."""
    saved = studio.post("/api/pieces", {"document": chain}).json()
    before = (folder / "slack-chain.json").read_bytes()
    bad = {**chain, "loom": {"kind": "rows", "rows": 0, "pegs": 3}}
    answer = studio.put("/api/pieces/slack-chain", {"document": bad, "edition": saved["edition"]})
    assert answer.status_code == 422
    assert answer.json()["findings"][0]["code"] == "not-a-pattern"
    assert (folder / "slack-chain.json").read_bytes() == before


def test_uploads_are_bounded(studio: Client, folder: Path) -> None:
    """A body larger than a pattern may be is refused before it is read whole."""
    answer = studio.post("/api/pieces", {"document": {"title": "x" * 9_000_000}})
    assert answer.status_code == 413
    assert list(folder.iterdir()) == []


TOO_LARGE = {"en": "larger than 8 MB", "de": "größer als 8 MB", "es": "pasa de 8 MB"}
GONE = {"en": "is no longer there", "de": "gibt es nicht mehr", "es": "ya no está"}


@pytest.mark.parametrize("language", TOO_LARGE)
def test_what_is_too_large_is_said_to_be(studio: Client, folder: Path, language: str) -> None:
    """A file past the limit was "no such piece" and off the shelf; a request was told in English only."""
    (folder / "flood.json").write_bytes(b" " * 9_000_000)
    (folder / "stash.json").write_bytes(b" " * 9_000_000)
    assert [(p["name"], p["readable"]) for p in studio.get("/api/pieces").json()["pieces"]] == [
        ("flood", False)
    ]
    for path in ("/api/pieces/flood", "/api/stash"):
        answer = studio.get(f"{path}?language={language}")
        assert answer.status_code == 422
        assert TOO_LARGE[language] in answer.json()["findings"][0]["message"]
    answer = studio.post(f"/api/pieces?language={language}", {"document": {"title": "x" * 9_000_000}})
    assert TOO_LARGE[language] in answer.json()["reason"]


@pytest.mark.parametrize("language", GONE)
def test_a_folder_that_was_removed_is_said_to_be(
    studio: Client, folder: Path, chain: Document, language: str
) -> None:
    """The shelf was empty and a piece was "no such piece"; only a save failed, for want of a file."""
    saved = studio.post("/api/pieces", {"document": chain}).json()
    folder.rename(folder.with_name("elsewhere"))
    said = f"?language={language}"
    change = {"document": chain, "edition": saved["edition"]}
    for answer in (
        studio.get(f"/api/pieces{said}"),
        studio.get(f"/api/pieces/slack-chain{said}"),
        studio.put(f"/api/pieces/slack-chain{said}", change),
        studio.post(f"/api/pieces{said}", {"document": chain}),
        studio.get(f"/api/stash{said}"),
        studio.put(f"/api/stash{said}", {"stash": {"stash": 1}, "edition": ""}),
        studio.get(f"/api/motifs{said}"),
        studio.ask("DELETE", f"/api/pieces/slack-chain{said}"),
        studio.post(f"/api/pieces/slack-chain/versions{said}", {}),
    ):
        assert answer.status_code == 507
        assert GONE[language] in answer.json()["reason"]
        assert str(folder) in answer.json()["reason"]
    folder.with_name("elsewhere").rename(folder)
    assert studio.put(f"/api/pieces/slack-chain{said}", change).status_code == 200


@pytest.mark.parametrize(("language", "words"), [("en", "disk is full"), ("de", "voll"), ("es", "lleno")])
def test_a_full_disk_is_said_in_the_language_of_the_page(
    studio: Client, chain: Document, monkeypatch: pytest.MonkeyPatch, language: str, words: str
) -> None:
    """The system's own English stood in every page."""

    def full(_: int) -> None:
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    monkeypatch.setattr(os, "fsync", full)
    answer = studio.post(f"/api/pieces?language={language}", {"document": chain})
    assert (answer.status_code, words in answer.json()["reason"]) == (507, True)


def test_an_unreadable_file_is_shown_as_such(studio: Client, folder: Path) -> None:
    """A file that holds no pattern is on the shelf, marked, and cannot be opened."""
    (folder / "torn.json").write_text('{"pegwright": 2, "tit')
    [shelved] = studio.get("/api/pieces").json()["pieces"]
    assert (shelved["name"], shelved["readable"]) == ("torn", False)
    answer = studio.get("/api/pieces/torn")
    assert answer.status_code == 422
    assert answer.json()["findings"][0]["code"] == "not-json"


def test_versions_are_kept(studio: Client, chain: Document) -> None:
    """A version keeps the piece as it was, whatever is saved after it."""
    saved = studio.post("/api/pieces", {"document": chain}).json()
    version = studio.ask("POST", "/api/pieces/slack-chain/versions").json()["version"]
    studio.put(
        "/api/pieces/slack-chain", {"document": {**chain, "title": "Later"}, "edition": saved["edition"]}
    )
    [kept] = studio.get("/api/pieces/slack-chain/versions").json()
    assert kept["version"] == version
    opened = studio.get(f"/api/pieces/slack-chain/versions/{version}").json()
    assert opened["document"]["title"] == "Slack chain"
    assert studio.get("/api/pieces/slack-chain/versions/20200101T000000000000Z").status_code == 404


@given(st.lists(st.tuples(st.integers(0, 2), st.binary(max_size=20)), max_size=12), st.randoms())
def test_a_save_wins_only_from_the_newest_edition(steps: list[tuple[int, bytes]], rng: random.Random) -> None:
    """Against a naive shelf: a save from the newest edition wins, any other is refused."""
    with tempfile.TemporaryDirectory() as root:
        folder = Folder(Path(root))
        held: dict[int, str | None] = {0: None, 1: None, 2: None}
        naive: bytes | None = None
        seen: dict[int, bytes | None] = {0: None, 1: None, 2: None}
        for page, data in steps:
            try:
                held[page] = folder.save("x", data, held[page])
                assert seen[page] == naive
                naive = seen[page] = data
            except ChangedError:
                assert seen[page] != naive
            if naive is not None and rng.random() < 0.3:
                opened = folder.open("x")
                assert opened == naive
                held[page], seen[page] = (
                    folder.save("x", opened, held[page]) if seen[page] == naive else held[page],
                    seen[page],
                )
        if naive is None:
            with pytest.raises(NoPieceError):
                folder.open("x")
        else:
            assert folder.open("x") == naive


def test_half_written_files_are_swept(folder: Path) -> None:
    """What a killed studio left half written goes at the next start; what is written now stays."""
    old, new, own = (folder / name for name in (".a.json.x1y2", ".b.json.x1y2", "c.json"))
    for path in (old, new, own):
        path.write_text("{")
    os.utime(old, (0, 0))
    os.utime(own, (0, 0))
    Folder(folder)
    assert sorted(path.name for path in folder.iterdir()) == [".b.json.x1y2", "c.json"]


def test_a_piece_is_taken_off_the_shelf_and_kept_aside(studio: Client, folder: Path, chain: Document) -> None:
    """It is listed no more, its name is free again, and its file lies aside as it was."""
    studio.post("/api/pieces", {"document": chain})
    before = (folder / "slack-chain.json").read_bytes()
    for _ in range(2):
        assert studio.ask("DELETE", "/api/pieces/slack-chain").status_code == 204
        assert studio.get("/api/pieces").json()["pieces"] == []
        assert studio.ask("DELETE", "/api/pieces/slack-chain").status_code == 404
        assert studio.post("/api/pieces", {"document": chain}).json()["name"] == "slack-chain"
    assert [file.read_bytes() for file in (folder / ".removed").iterdir()] == [before, before]
    for name in ("..%2Fslack-chain", ".removed", "stash", "%2e%2e"):
        assert studio.ask("DELETE", f"/api/pieces/{name}").status_code in (400, 404, 405)
    assert (folder / "slack-chain.json").exists()


def test_a_makers_text_stays_text(studio: Client, folder: Path, chain: Document) -> None:
    """It is listed, opened and saved as text; remarks and layout of the maker's own are kept as a version."""
    by_hand = write_pattern_text(read_pattern(json.dumps(chain).encode()).pattern) + "\n# as for Saturday\n"
    file = folder / "low-tide.pegwright"
    file.write_text(by_hand)
    shelved = studio.get("/api/pieces").json()["pieces"]
    assert [(one["name"], one["title"], one["readable"]) for one in shelved] == [
        ("low-tide.pegwright", chain["title"], True)
    ]
    opened = studio.get("/api/pieces/low-tide.pegwright").json()
    made = {**opened["document"], "title": "Spring tide"}
    for count in (1, 1):
        saved = studio.put(
            "/api/pieces/low-tide.pegwright", {"document": made, "edition": opened["edition"]}
        ).json()
        assert read_pattern_text(file.read_bytes()).pattern.title == "Spring tide"
        versions = studio.get("/api/pieces/low-tide.pegwright/versions").json()
        assert len(versions) == count, "what the program itself wrote needs no keeping"
        opened = {"document": made, "edition": saved["edition"]}
    kept = f"/api/pieces/low-tide.pegwright/versions/{versions[0]['version']}"
    assert studio.get(kept).json()["document"]["title"] == chain["title"]
    assert next((folder / ".versions" / "low-tide.pegwright").iterdir()).read_text() == by_hand
    other = {**made, "title": "Neap tide"}
    stale = studio.put("/api/pieces/low-tide.pegwright", {"document": other, "edition": "0" * 32})
    assert stale.status_code == 409
    assert (
        studio.post("/api/pieces", {"document": {**chain, "title": "Low tide"}}).json()["name"]
        == "low-tide-2"
    )
    studio.ask("DELETE", "/api/pieces/low-tide.pegwright")
    assert not file.exists()
    assert [path.suffix for path in (folder / ".removed").iterdir()] == [".pegwright"]


def test_a_text_that_is_wrong_says_its_line(studio: Client, folder: Path) -> None:
    (folder / "x.pegwright").write_text("pegwright 3\ntitle: X\nplase A over A1 A2\n")
    answer = studio.get("/api/pieces/x.pegwright")
    assert answer.status_code == 422
    assert answer.json()["findings"][0]["place"]["line"] == 3
