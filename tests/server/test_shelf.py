"""Beside the pieces: the motifs in them, with pictures, and the maker's own stash."""

from __future__ import annotations

import json
import os
from pathlib import Path
from typing import Any

import msgspec
import pytest

from pegwright.fit import read_stash
from pegwright.loom import replay_pattern
from pegwright.pattern import PatternBuilder, Place, Rows, expand, read_pattern, write_pattern
from pegwright.server.motifs import motifs_of
from pegwright.server.starters import glance
from tests.server.conftest import Client

Document = dict[str, Any]


def lights(title: str = "Quay lights", pitch_mm: float = 16.0) -> Document:
    """A strip of two lanterns: a motif that works another one and is given its colour where it is worked."""
    m = PatternBuilder(title, Rows(rows=3, pegs=13, pitch_mm=pitch_mm))
    m.colour("A", "slate blue", "#34506b").colour("L", "lamp yellow", "#d9a520")
    with m.motif("spoke", "glass"):
        m.place("glass", "B2", "A2")
    with m.motif("lantern", "glass"):
        m.place("A", "B1", "A2")
        m.use("spoke", colours={"glass": "glass"})
    m.use("lantern", pegs=0, colours={"glass": "L"})
    m.use("lantern", pegs=2, colours={"glass": "L"})
    return dict(msgspec.json.decode(write_pattern(m.pattern())))


def own(studio: Client) -> list[Document]:
    return [each for each in studio.get("/api/motifs").json() if each["piece"]]


def test_motifs_bring_all_that_they_take(studio: Client) -> None:
    """What is told of a motif makes a piece of its own, with the same bands over the same pegs."""
    document = lights()
    studio.post("/api/pieces", {"document": document})
    found = {each["name"]: each for each in own(studio)}
    assert found.keys() == {"spoke", "lantern"}
    lantern = found["lantern"]
    assert (lantern["title"], lantern["bands"], lantern["slots"]) == ("Quay lights", 2, {"glass": "L"})
    assert [motif["name"] for motif in lantern["motifs"]] == ["lantern", "spoke"]
    assert [colour["letter"] for colour in lantern["colours"]] == ["A", "L"]
    made = {
        "pegwright": document["pegwright"],
        "title": "One lantern",
        "loom": lantern["loom"],
        "colours": lantern["colours"],
        "motifs": lantern["motifs"],
        "steps": [{"do": "motif", "name": "lantern", "colours": lantern["slots"]}],
    }
    pattern = read_pattern(json.dumps(made).encode()).pattern
    assert pattern is not None
    expansion = expand(pattern)
    assert expansion.findings == ()
    places = [doing.move for doing in expansion.moves]
    assert places == [Place(colour="A", over=("B1", "A2")), Place(colour="L", over=("B2", "A2"))]


def test_the_picture_shows_the_bands_where_they_lie(studio: Client) -> None:
    """Each band of the picture names pegs as far apart as the loom's are: Pythagoras on pitch and row gap."""
    studio.post("/api/pieces", {"document": lights(pitch_mm=20.0)})
    glance = next(each for each in own(studio) if each["name"] == "lantern")["glance"]
    assert [band["tint"] for band in glance["bands"]] == ["#34506b", "#d9a520"]
    apart = []
    for band in glance["bands"]:
        (ax, ay), (bx, by) = (glance["pegs"][i] for i in band["over"])
        apart.append(((ax - bx) ** 2 + (ay - by) ** 2) ** 0.5)
    assert apart == pytest.approx([(20**2 + 14**2) ** 0.5, 14.0])
    assert len(glance["pegs"]) < 39  # not the whole loom, only what lies about it


def test_of_a_letter_given_twice_the_first_tint_counts() -> None:
    """As on the loom and in the lesson; the small pictures took the last."""
    document = lights()
    document["colours"].append({"letter": "A", "name": "weed", "hex": "#336633"})
    pattern = read_pattern(msgspec.json.encode(document)).pattern
    assert pattern is not None
    (lantern,) = (each for each in motifs_of("", pattern) if each.name == "lantern")
    assert lantern.glance.bands[0].tint == "#34506b"
    assert glance(pattern, replay_pattern(pattern)).bands[0].tint == "#34506b"


def test_the_same_motif_is_told_once(studio: Client) -> None:
    """A copy of a piece brings no second lantern; another one of that name is told apart."""
    studio.post("/api/pieces", {"document": lights()})
    studio.post("/api/pieces", {"document": lights("Quay lights once more")})
    assert sorted(each["name"] for each in own(studio)) == ["lantern", "spoke"]
    other = lights("Other lights")
    other["motifs"][1]["steps"][0]["over"] = ["B1", "C2"]
    studio.post("/api/pieces", {"document": other})
    assert sorted(each["name"] for each in own(studio)) == ["lantern", "lantern", "spoke"]


def test_built_in_motifs_are_there_from_the_start(studio: Client) -> None:
    """There is something to lay before anything was made; a broken file on the shelf is passed over."""
    names = {each["name"] for each in studio.get("/api/motifs").json() if not each["piece"]}
    assert {"outline", "light"} <= names


def test_a_motif_brings_what_it_reads_in_other_languages(studio: Client) -> None:
    """Its own texts and the names of its colours, and no more of the piece's translations."""
    (light,) = (each for each in studio.get("/api/motifs").json() if each["name"] == "light")
    assert light["language"] == "en"
    german = light["translations"]["de"]
    assert german["lamp yellow"] == "lampengelb"
    written = [part for motif in light["motifs"] for part in (motif, *motif["steps"])]
    notes = {part["note"] for part in written if part.get("note")}
    assert notes
    assert german.keys() == notes | {colour["name"] for colour in light["colours"]}


def test_a_file_that_is_no_pattern_is_passed_over(studio: Client, folder: Path) -> None:
    """The motifs of the others are told all the same."""
    (folder / "torn.json").write_text('{"pegwright": 2, "title"')
    studio.post("/api/pieces", {"document": lights()})
    assert len(own(studio)) == 2


def test_the_stash_goes_round(studio: Client, folder: Path) -> None:
    """There is none at first; what is saved is a stash file beside the pieces, and no piece."""
    told = studio.get("/api/stash").json()
    assert told["edition"] == ""
    bands = [
        {"colour": "slate blue", "tint": "#34506b", "have": 40, "packs": [{"size": 300, "price": "2.40"}]}
    ]
    saved = studio.put("/api/stash", {"stash": {"stash": 1, "bands": bands}, "edition": ""})
    assert saved.status_code == 200
    kept = read_stash((folder / "stash.json").read_bytes()).stash
    assert kept is not None
    assert (kept.bands[0].colour, kept.bands[0].have, kept.bands[0].tint) == ("slate blue", 40, "#34506b")
    again = studio.get("/api/stash").json()
    assert again["edition"] == saved.json()["edition"]
    assert again["stash"]["bands"][0]["packs"] == [{"size": 300, "price": "2.40"}]
    assert studio.get("/api/pieces").json()["pieces"] == []
    assert studio.get("/api/pieces/stash").status_code == 404


def test_two_windows_never_overwrite_the_stash(studio: Client, folder: Path) -> None:
    """The second to save from one edition is told so; so is one that knows of no file where there is one."""
    first = studio.put("/api/stash", {"stash": {"stash": 1}, "edition": ""}).json()
    body = {
        "stash": {"stash": 1, "bands": [{"colour": "weed green", "have": 1}]},
        "edition": first["edition"],
    }
    assert studio.put("/api/stash", body).status_code == 200
    assert studio.put("/api/stash", body).status_code == 409
    assert studio.put("/api/stash", {"stash": {"stash": 1}, "edition": ""}).status_code == 409
    assert b"weed green" in (folder / "stash.json").read_bytes()


def test_a_torn_stash_is_left_alone(studio: Client, folder: Path) -> None:
    """It is not taken for an empty one, which a save would then put in its place."""
    (folder / "stash.json").write_text('{"stash": 1, "bands": 7}')
    told = studio.get("/api/stash")
    assert told.status_code == 422
    assert told.json()["findings"]
    assert studio.put("/api/stash", {"stash": {"stash": 1}, "edition": ""}).status_code == 409
    assert json.loads((folder / "stash.json").read_text())["bands"] == 7


@pytest.mark.parametrize("tint", ["red", "#12345", "#1234567", "url(x)", "#34506b\n"])
def test_a_tint_is_a_tint(studio: Client, tint: str) -> None:
    """Nothing else comes into the page as a colour."""
    body = {"stash": {"stash": 1, "bands": [{"colour": "x", "tint": tint}]}, "edition": ""}
    assert studio.put("/api/stash", body).status_code == 400


def test_no_piece_takes_the_name_of_the_stash(studio: Client, chain: Document) -> None:
    """A piece called Stash gets another file, and the stash stays what it is."""
    saved = studio.post("/api/pieces", {"document": {**chain, "title": "Stash"}}).json()
    assert saved["name"] == "stash-2"
    assert studio.get("/api/stash").json()["edition"] == ""


def test_a_pipe_on_the_shelf_is_not_waited_for(studio: Client, folder: Path) -> None:
    """A named pipe made the shelf, the stash and the piece wait for ever."""
    os.mkfifo(folder / "stash.json")
    os.mkfifo(folder / "tide.json")
    assert studio.get("/api/pieces").json()["pieces"] == []
    assert studio.get("/api/pieces/tide").status_code == 404
    assert studio.get("/api/stash").status_code == 404


@pytest.mark.parametrize("link", [".versions", ".versions/slack-chain", ".removed"])
def test_a_link_leads_no_version_and_no_removed_piece_out(
    studio: Client, folder: Path, tmp_path: Path, link: str, chain: Document
) -> None:
    outside = tmp_path / "outside"
    outside.mkdir()
    studio.post("/api/pieces", {"document": chain})
    (folder / link).parent.mkdir(exist_ok=True)
    (folder / link).symlink_to(outside)
    if link == ".removed":
        assert studio.ask("DELETE", "/api/pieces/slack-chain").status_code == 507
    else:
        assert studio.post("/api/pieces/slack-chain/versions", {}).status_code == 507
    assert list(outside.iterdir()) == []
    assert (folder / "slack-chain.json").exists()


def test_versions_of_a_wrong_clock_do_not_push_out_the_new_one(
    studio: Client, folder: Path, chain: Document
) -> None:
    """Two hundred versions stamped in the future made keeping a version fail."""
    studio.post("/api/pieces", {"document": chain})
    shelf = folder / ".versions" / "slack-chain"
    shelf.mkdir(parents=True)
    for k in range(200):
        (shelf / f"21000101T{k // 60:02}{k % 60:02}00000000Z.json").write_text("{}")
    kept = studio.post("/api/pieces/slack-chain/versions", {})
    assert kept.status_code == 201
    assert (shelf / f"{kept.json()['version']}.json").exists()
    assert len(list(shelf.iterdir())) == 200
