"""A picture is looked at as a mat and made one, and a piece has its variants made, by requests alone."""

from __future__ import annotations

import base64
import io
import time
from typing import Any

import msgspec
import numpy as np
import pytest
from PIL import Image

from pegwright.pattern import read_pattern, write_pattern
from pegwright.variants import TECHNIQUES, read_mat
from pegwright.workshop import work
from tests.server.conftest import Client

COLOURS = [
    {"name": "foam white", "tint": "#f2efe6", "have": 3},
    {"name": "slate", "tint": "#34506b"},
]


def picture(left: str = "#f2efe6", right: str = "#34506b") -> str:
    """Return a picture of two halves, in base 64."""
    dots = np.zeros((30, 72, 3), dtype=np.uint8)
    for at, tint in ((slice(0, 36), left), (slice(36, 72), right)):
        dots[:, at] = [int(tint[k : k + 2], 16) for k in (1, 3, 5)]
    into = io.BytesIO()
    Image.fromarray(dots).save(into, "PNG")
    return base64.b64encode(into.getvalue()).decode()


def finish(studio: Client, job: Any, document: object) -> dict[str, Any]:
    status = studio.post("/api/jobs", {"piece": "p", "job": job, "document": document}).json()
    end = time.monotonic() + 60
    while status["state"] in ("waiting", "running") and time.monotonic() < end:
        status = studio.get(f"/api/jobs/{status['job']}?seen={status['serial']}").json()
    return dict(status)


def test_a_picture_is_looked_at_both_ways(studio: Client) -> None:
    choice = {"title": "Halves", "across": 6, "down": 6, "colours": COLOURS}
    told = studio.post("/api/mat?language=de", {"picture": picture(), "choice": choice}).json()
    assert told["plain"]["rows"] == [[0, 0, 0, 1, 1, 1]] * 6
    assert told["plain"]["needed"] == [18, 18]
    assert told["mixed"]["rows"] == told["plain"]["rows"]  # both colours are there: nothing to mix
    assert told["cell_mm"] == [pytest.approx(7.2, abs=0.1), pytest.approx(3.0, abs=0.1)]
    (found,) = told["plain"]["findings"]
    assert found["code"] == "colour-runs-short"
    grey = studio.post("/api/mat", {"picture": picture("#808080", "#808080"), "choice": choice}).json()
    assert len({at for row in grey["mixed"]["rows"] for at in row}) == 2
    assert len({at for row in grey["plain"]["rows"] for at in row}) == 1


def test_what_cannot_be_a_mat_is_said(studio: Client) -> None:
    choice = {"title": "None", "colours": COLOURS}
    bad = base64.b64encode(b"no picture").decode()
    told = studio.post("/api/mat", {"picture": bad, "choice": choice}).json()
    assert told["plain"] is None
    assert told["reason"]
    wrong = {"picture": picture(), "choice": {**choice, "crop": [0.5, 0.0, 0.5, 1.0]}}
    assert studio.post("/api/mat", wrong).json()["reason"]
    assert (
        studio.post("/api/mat", {"picture": bad, "choice": {"title": "", "colours": []}}).status_code == 400
    )


def test_a_mat_is_made_and_proved(studio: Client) -> None:
    choice = {"title": "Halves", "across": 6, "down": 6, "colours": COLOURS}
    done = finish(
        studio, {"do": "mat", "language": "es", "picture": picture(), "choice": choice}, document={}
    )
    assert (done["state"], done["files"]) == ("done", ["mat.json"])
    made = studio.get(f"/api/jobs/{done['job']}/files/mat.json").json()
    assert made["holds"]
    assert made["bands"] == 36
    assert made["document"]["language"] == "es"
    pattern = read_pattern(msgspec.json.encode(made["document"])).pattern
    assert pattern is not None
    assert read_mat(pattern) is not None


def test_variants_come_first_and_their_pictures_after(studio: Client) -> None:
    chain = TECHNIQUES["chain-1"].make(3)
    choice = {"colourways": 2, "colours": [*COLOURS, {"name": "rust", "tint": "#8e3b1f", "have": 90}]}
    document = msgspec.json.decode(write_pattern(chain))
    done = finish(studio, {"do": "variants", "choice": choice}, document)
    assert done["state"] == "done"
    told = studio.get(f"/api/jobs/{done['job']}/files/variants.json").json()
    assert len(told["variants"]) == 2
    for one in told["variants"]:
        assert one["apart"] > 10
        remade = read_pattern(msgspec.json.encode(one["document"])).pattern
        assert remade is not None
        assert work(remade).holds
        picture_png = studio.get(f"/api/jobs/{done['job']}/files/{one['picture']}").content
        assert Image.open(io.BytesIO(picture_png)).width == 320
    refused = finish(studio, {"do": "variants", "choice": {**choice, "colours": COLOURS[:1]}}, document)
    assert refused["state"] == "refused"
    assert refused["reason"]
