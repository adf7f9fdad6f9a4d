"""A standing adversary: bad documents, paths and headers, kills, tampered proofs; nothing may give way."""

from __future__ import annotations

import asyncio
import itertools
import json
import random
import secrets
import subprocess
import sys
import tempfile
import time
from collections.abc import Sequence
from pathlib import Path

import httpx

from bench.document_attack import attack_documents
from bench.report import Figure
from pegwright.loom import Event
from pegwright.pattern import read_pattern
from pegwright.proof import Free, Held, HeldInLeast, Proof, check, prove
from pegwright.server import make_app
from pegwright.structure import structure_of
from pegwright.workshop import example_files
from testing import histories
from testing.proof_programs import lattice, program, ring
from testing.spoil_proofs import spoil_proof

_SPECIAL = (
    "/",
    "//",
    "/.",
    "/..",
    "%2f",
    "%2e",
    "%00",
    "%61",
    "\\",
    ";",
    "?",
    "#",
    "%",
    "%c3%28",
    "é",
    "/./",
)
_WORDS = (
    "api",
    "pieces",
    "work",
    "jobs",
    "stash",
    "preview",
    "assets",
    "schema",
    "ebb",
    "index.html",
    "a-1.js",
)


def run(quick: bool) -> list[Figure]:
    """Attack with 20,000 documents and requests, 100 kills each, 50,000 tampered proofs; few if quick."""
    return [
        *attack_documents(range(1, 41 if quick else 20_001)),
        *_requests(500 if quick else 20_000),
        *_lesson_kills(2 if quick else 100),
        *_studio_kills(2 if quick else 100),
        *_tampered_proofs(400 if quick else 50_000),
    ]


def _none(name: str, count: int, unit: str) -> Figure:
    return Figure(name, count, unit, "0", count == 0)


# --- requests -------------------------------------------------------------------------------------------


def _requests(count: int) -> list[Figure]:
    """Write paths and headers in every way, without the key: nothing but the page may be answered."""
    with tempfile.TemporaryDirectory() as name:
        folder, page = Path(name) / "pieces", Path(name) / "page"
        folder.mkdir()
        (page / "assets").mkdir(parents=True)
        (page / "index.html").write_text("page")
        (page / "assets" / "a-1.js").write_text("page")
        answered, broken = asyncio.run(_ask_without_key(count, folder, page))
        left = len(list(folder.iterdir()))
    return [
        Figure("requests without the key", count, "requests"),
        _none("answered", answered, "requests"),
        _none("answered with a fault of ours", broken, "requests"),
        _none("files written", left, "files"),
    ]


async def _ask_without_key(count: int, folder: Path, page: Path) -> tuple[int, int]:
    host = "127.0.0.1:4711"
    app = make_app(folder, secrets.token_urlsafe(24), frozenset({host}), page)
    answered = broken = 0
    for seed in range(count):
        rng = random.Random(seed)
        path = "/" + "".join(
            rng.choice((*_WORDS, *_SPECIAL, "/", "/", "/")) for _ in range(rng.randint(1, 9))
        )
        headers = [(b"host", host.encode())]
        if rng.random() < 0.3:
            headers.append((b"x-pegwright-token", rng.randbytes(rng.randint(0, 40)).hex().encode()))
        if rng.random() < 0.1:
            headers.append(
                (rng.choice((b"host", b"origin", b"sec-fetch-site")), rng.randbytes(8).hex().encode())
            )
        raw = path.encode("utf-8")
        scope = {
            "type": "http",
            "asgi": {"version": "3.0"},
            "http_version": "1.1",
            "method": rng.choice(("GET", "POST", "PUT", "DELETE", "HEAD", "PATCH")),
            "scheme": "http",
            "path": httpx.URL(f"http://{host}{path.partition('?')[0].partition('#')[0]}").path,
            "raw_path": raw,
            "query_string": b"",
            "root_path": "",
            "headers": headers,
            "client": ("127.0.0.1", 1),
            "server": ("127.0.0.1", 4711),
        }
        status, body = await _answer_of(app, scope)
        answered += status < 400 and body not in (b"page", b"")
        broken += status >= 500
    return answered, broken


async def _answer_of(app: object, scope: dict[str, object]) -> tuple[int, bytes]:
    said: list[dict[str, object]] = []

    async def receive() -> dict[str, object]:
        return {"type": "http.request", "body": b"{}", "more_body": False}

    async def send(message: dict[str, object]) -> None:
        said.append(message)

    try:
        await app(scope, receive, send)  # type: ignore[operator]
    except Exception:  # an exception that reaches the server is a fault of ours as well
        return 599, b""
    status = next((m["status"] for m in said if m["type"] == "http.response.start"), 599)
    body = b"".join(m["body"] for m in said if isinstance(m.get("body"), bytes))  # type: ignore[misc]
    return int(str(status)), body


# --- kills ----------------------------------------------------------------------------------------------


def _lesson_kills(count: int) -> list[Figure]:
    """Kill the making of a lesson at any moment: each file there is whole, as a whole run writes it."""
    piece = example_files()["ebb-line"]
    command = [sys.executable, "-m", "pegwright", "lesson", str(piece)]
    options = ["--parts", "handout,page,script,captions", "--no-picture", "--no-fit", "--no-rehearse"]
    torn = 0
    with tempfile.TemporaryDirectory() as name:
        whole, out = Path(name) / "whole", Path(name) / "killed"
        began_s = time.monotonic()
        subprocess.run([*command, str(whole), *options], check=True, stdout=subprocess.DEVNULL)
        lasts_s = time.monotonic() - began_s
        expected = {p.relative_to(whole): p.read_bytes() for p in whole.rglob("*") if p.is_file()}
        for seed in range(count):
            making = subprocess.Popen([*command, str(out), *options], stdout=subprocess.DEVNULL)
            time.sleep(random.Random(seed).uniform(0.3, 1.0) * lasts_s)
            making.kill()
            making.wait()
            for path in out.rglob("*"):
                if path.is_file() and not path.name.startswith("."):
                    torn += path.read_bytes() != expected.get(path.relative_to(out))
    return [Figure("kills of a lesson", count, "kills"), _none("torn files", torn, "files")]


def _studio_kills(count: int) -> list[Figure]:
    """Kill the studio between edits: the file is whole, and holds the last edit acknowledged or the next."""
    torn = lost = 0
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        document = json.loads(example_files()["ebb-line"].read_text("utf-8"))
        (folder / "ebb.json").write_text(json.dumps({**document, "title": "edit 0"}))
        kept = 0
        for seed in range(count):
            command = [sys.executable, "-m", "pegwright", "studio", str(folder), "--no-browser"]
            studio = subprocess.Popen(command, stdout=subprocess.PIPE, text=True)
            assert studio.stdout is not None
            address, _, token = studio.stdout.readline().strip().partition("/#")
            headers = {"x-pegwright-token": token}
            with httpx.Client(base_url=address, headers=headers, timeout=60) as page:
                until_s = time.monotonic() + random.Random(seed).uniform(0.05, 1.0)
                edition = page.get("/api/pieces/ebb").json()["edition"]
                while time.monotonic() < until_s:
                    edited = {**document, "title": f"edit {kept + 1}"}
                    answer = page.put("/api/pieces/ebb", json={"document": edited, "edition": edition})
                    edition, kept = answer.json()["edition"], kept + 1
            studio.kill()
            studio.wait()
            studio.stdout.close()
            pattern = read_pattern((folder / "ebb.json").read_bytes()).pattern
            torn += pattern is None
            lost += pattern is not None and int(pattern.title.split()[-1]) not in (kept, kept + 1)
    return [
        Figure("kills of the studio", count, "kills"),
        _none("torn pieces", torn, "pieces"),
        _none("edits lost", lost, "edits"),
    ]


# --- proofs ---------------------------------------------------------------------------------------------


def _tampered_proofs(count: int) -> list[Figure]:
    """Change one field of one certificate of every kind; count what is accepted and says what is not so.

    A change may leave a certificate that still proves a true verdict (another path that holds the band as
    well, other least words): that is no false claim, and is counted apart.
    """
    wholes = [histories.chain(12), histories.fish_tail(9), histories.strip(2), ring(9), lattice(181)]
    proofs: dict[int, tuple[Sequence[Event], Proof]] = {}
    false = still_true = 0
    tampered = 0
    for seed in itertools.count():
        if tampered == count:
            break
        rng = random.Random(seed)
        at = rng.randrange(-len(wholes), 400)
        if at not in proofs:
            events: Sequence[Event] = wholes[at] if at < 0 else program(at)
            proofs[at] = events, prove(structure_of(events))
        events, proof = proofs[at]
        spoiled = spoil_proof(proof, rng)
        if spoiled == proof:
            continue
        tampered += 1
        if check(events, spoiled) is None:
            wrong = _claims(spoiled).items() - _claims(proof).items()
            # What the prover left open, another certificate may hold; it may never set it free.
            claimed_free = any(held is False for _, held in wrong)
            unheld = any(held and _claims(proof).get(band) is False for band, held in wrong)
            false += claimed_free or unheld
            still_true += not (claimed_free or unheld)
    return [
        Figure("tampered proofs", tampered, "proofs"),
        _none("false claims accepted", false, "proofs"),
        Figure("accepted, and still true", still_true, "proofs"),
    ]


def _claims(proof: Proof) -> dict[int, bool]:
    """Return of every band whether it is held or free; those left open are left out."""
    sides = {Held: True, HeldInLeast: True, Free: False}
    return {band: sides[type(v)] for band, v in proof.verdicts.items() if type(v) in sides}
