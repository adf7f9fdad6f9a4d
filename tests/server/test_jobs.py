"""Work in the background: told as it goes, ended at once, never left behind."""

from __future__ import annotations

import hashlib
import io
import math
import os
import signal
import subprocess
import sys
import time
import zipfile
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import psutil
import pytest
from msgspec.json import decode, encode

from pegwright.pattern import Pattern, PatternBuilder, Rows, read_pattern, write_pattern
from pegwright.server import jobs as jobs_
from pegwright.server.job_requests import PressRequest
from pegwright.server.jobs import BusyError, Jobs, JobStatus, NoJobError
from pegwright.workshop import example_files, open_pattern, rehearse_piece, work
from testing.rosettes import rosettes
from tests.server.conftest import Client

Document = dict[str, Any]
_PROCESSES = Path("/proc")


@pytest.fixture
def jobs() -> Iterator[Jobs]:
    made = Jobs()
    yield made
    made.close()


@pytest.fixture
def long() -> Document:
    """A piece whose lesson takes far longer to press than any test here lasts."""
    from msgspec.json import decode

    m = PatternBuilder("Long haul", Rows(rows=1, pegs=2000)).colour("A", "slate blue", "#34506b")
    for k in range(1, 1500):
        m.place("A", f"A{k}", f"A{k + 1}")
    return dict(decode(write_pattern(m.pattern())))


@pytest.fixture
def strip() -> Document:
    """A piece that takes long to rehearse and to bring to rest, but its first handout does not."""
    return dict(decode(write_pattern(rosettes(6))))


def finish(look: Any, told: JobStatus) -> list[JobStatus]:
    """Return all that is told until the job is closed."""
    heard = [told]
    while heard[-1].state in ("waiting", "running"):
        heard.append(look(told.job, heard[-1].serial))
    return heard


def finish_in(studio: Client, piece: str, job: Any, document: Document) -> Any:
    """Return what the studio tells of a job in the end."""
    told = studio.post("/api/jobs", {"piece": piece, "job": job, "document": document}).json()
    while told["state"] in ("waiting", "running"):
        told = studio.get(f"/api/jobs/{told['job']}?seen={told['serial']}").json()
    return told


def open_example(name: str) -> Pattern:
    pattern = open_pattern(example_files()[name]).pattern
    assert pattern is not None
    return pattern


def wait_for(what: Any, seconds: float = 120.0) -> None:
    end = time.monotonic() + seconds
    while not what():
        assert time.monotonic() < end, "it did not come about"
        time.sleep(0.02)


def test_a_lesson_is_pressed_with_progress(studio: Client, chain: Document) -> None:
    """The lesson comes as a zip whose hashes are those that it lists; on the way it tells how far it is."""
    request = {"do": "press", "paper": "letter", "language": "de", "whole": True}
    told = studio.post("/api/jobs", {"piece": "slack", "job": request, "document": chain}).json()
    heard = [told]
    while told["state"] in ("waiting", "running"):
        told = studio.get(f"/api/jobs/{told['job']}?seen={told['serial']}").json()
        heard.append(told)
    assert told["state"] == "done", told
    serials = [each["serial"] for each in heard]
    assert serials == sorted(serials)  # one comes again where there was nothing new for ten seconds
    assert len(set(serials)) > 3
    assert any(each.get("what", "").startswith("pressing") for each in heard)
    assert {"handout-letter.pdf", "follow.html", "lesson.zip"} <= set(told["files"])
    answer = studio.get(f"/api/jobs/{told['job']}/files/lesson.zip")
    with zipfile.ZipFile(io.BytesIO(answer.content)) as zipped:
        assert zipped.testzip() is None
        sums = dict(line.split("  ")[::-1] for line in zipped.read("SHA256SUMS.txt").decode().splitlines())
        for name in zipped.namelist():
            if name != "SHA256SUMS.txt":
                assert hashlib.sha256(zipped.read(name)).hexdigest() == sums[name]
        page = zipped.read("follow.html").decode()
        assert 'lang="de"' in page
        assert "finished.png" in zipped.namelist(), "it shows the piece at rest"
        assert 'class="trouble"' in page, "and what its rehearsal found"


def test_the_page_of_a_lesson_is_shut_off_from_the_studio(studio: Client, chain: Document) -> None:
    """The frame needs no token but the job's secret name; it is sandboxed, and nothing but pages is shown."""
    told = studio.post("/api/jobs", {"piece": "s", "job": {"do": "press"}, "document": chain}).json()
    while told["state"] in ("waiting", "running"):
        told = studio.get(f"/api/jobs/{told['job']}?seen={told['serial']}").json()
    assert told["files"] == ["follow.html"]
    answer = studio.get(f"/preview/{told['job']}/follow.html", headers={"x-pegwright-token": ""})
    assert answer.status_code == 200
    policy = answer.headers["content-security-policy"]
    assert "sandbox allow-scripts;" in policy
    assert "default-src 'none'" in policy
    assert "img-src data:;" in policy, "the finished piece is a picture inside the page"
    assert "connect-src" not in policy
    assert "Slack chain" in answer.text
    for path in (
        "/preview/guessed/follow.html",
        f"/preview/{told['job']}/other.html",
        f"/preview/{told['job']}/lesson.zip",
    ):
        assert studio.get(path).status_code == 404


def test_orders_are_found_and_told_in_words(studio: Client, chain: Document) -> None:
    """Whole documents, each proved; what cannot be is a finding in the language of the request."""
    laid = {**chain, "steps": [step for step in chain["steps"] if step["do"] in ("place", "repeat")][:1]}
    told = finish_in(studio, "chain", {"do": "plan", "language": "de"}, laid)
    assert told["state"] == "done", told
    found = studio.get(f"/api/jobs/{told['job']}/files/orders.json").json()
    assert len(found["orders"]) > 1
    phrases = [order["phrases"] for order in found["orders"]]
    assert phrases == sorted(phrases)
    for order in found["orders"]:
        made = read_pattern(encode(order["document"])).pattern
        assert made is not None
        assert work(made).holds
    told = finish_in(studio, "chain", {"do": "plan", "language": "de"}, chain)
    held = studio.get(f"/api/jobs/{told['job']}/files/orders.json").json()
    assert held["orders"] == []
    assert "schon gearbeitet" in held["findings"][0]["message"]
    told = finish_in(studio, "chain", {"do": "plan", "afresh": True}, chain)
    assert studio.get(f"/api/jobs/{told['job']}/files/orders.json").json()["orders"]


def test_a_piece_that_falls_is_mended(studio: Client) -> None:
    """The flat tail: its first band is put on crossed; the cause is told first."""
    tail = decode(write_pattern(open_example("broken/flat-tail")))
    told = finish_in(studio, "tail", {"do": "mend", "language": "es"}, tail)
    assert told["state"] == "done", told
    found = studio.get(f"/api/jobs/{told['job']}/files/mends.json").json()
    made = read_pattern(encode(found["mends"][0]["document"])).pattern
    assert made is not None
    assert work(made).holds
    assert "media torsión" in found["mends"][0]["label"]
    assert found["findings"][0]["code"] == "band-falls"


def test_newer_work_ends_the_older_at_once(jobs: Jobs, chain: Document, long: Document) -> None:
    """A second request in the same slot ends the first, and its process is gone."""
    first = jobs.start("rest slack", PressRequest(whole=True), long)
    wait_for(lambda: jobs.status(first.job).state == "running")
    process = jobs._jobs[first.job].process
    assert process is not None
    second = jobs.start("rest slack", PressRequest(), chain)
    assert jobs.status(first.job).state == "ended"
    wait_for(lambda: not psutil.pid_exists(process.pid))
    assert finish(jobs.status, second)[-1].state == "done"
    assert jobs.status(first.job).state == "ended"


def test_what_cannot_be_done_says_why(jobs: Jobs, chain: Document) -> None:
    """No pattern, and a piece that cannot be mirrored, are refused with a reason."""
    told = finish(jobs.status, jobs.start("a", PressRequest(), {"pegwright": 2, "title": ""}))[-1]
    assert told.state == "refused"
    assert told.findings
    with pytest.raises(NoJobError):
        jobs.file(told.job, "follow.html")


def test_a_job_that_dies_is_told_as_failed(jobs: Jobs, long: Document) -> None:
    """A process that is killed from outside leaves no one waiting."""
    told = jobs.start("a", PressRequest(whole=True), long)
    wait_for(lambda: jobs.status(told.job).state == "running")
    process = jobs._jobs[told.job].process
    assert process is not None
    process.send_signal(signal.SIGKILL)
    assert finish(jobs.status, told)[-1].state == "failed"


def test_only_so_much_waits(jobs: Jobs, long: Document, monkeypatch: pytest.MonkeyPatch) -> None:
    """More than may wait is refused; two at the most run at once."""
    monkeypatch.setattr(jobs_, "MOST_WAITING", 4)  # few enough that none is done while they are begun
    started = [jobs.start(str(k), PressRequest(whole=True), long) for k in range(jobs_.MOST_WAITING)]
    with pytest.raises(BusyError):
        jobs.start("one more", PressRequest(), long)
    wait_for(lambda: sum(jobs.status(each.job).state == "running" for each in started) == jobs_.AT_ONCE)
    for each in started:
        jobs.end(each.job)
    jobs.start("one more", PressRequest(), long)


def test_a_job_nobody_asks_about_is_ended(
    jobs: Jobs, long: Document, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A page that was closed leaves no work behind."""
    monkeypatch.setattr(jobs_, "FORGOTTEN_S", 0.2)
    told = jobs.start("a", PressRequest(whole=True), long)
    wait_for(lambda: jobs._jobs[told.job].status.state == "ended")


def test_no_process_outlives_a_killed_studio(tmp_path: Path, long: Document) -> None:
    """When the studio itself is killed, its jobs see their input close and end."""
    script = tmp_path / "parent.py"
    script.write_text(
        "import json, sys, time\n"
        "from pegwright.server.job_requests import PressRequest\n"
        "from pegwright.server.jobs import Jobs\n"
        "jobs = Jobs()\n"
        "told = jobs.start('a', PressRequest(whole=True), json.loads(sys.stdin.read()))\n"
        "while jobs.status(told.job).state != 'running': time.sleep(0.01)\n"
        "print(jobs._jobs[told.job].process.pid, jobs._spare.pid, flush=True)\n"
        "time.sleep(60)\n"
    )
    import json

    with subprocess.Popen(
        [sys.executable, str(script)], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True
    ) as parent:
        assert parent.stdin is not None
        assert parent.stdout is not None
        parent.stdin.write(json.dumps(long))
        parent.stdin.close()
        pids = [int(each) for each in parent.stdout.readline().split()]
        assert len(pids) == 2
        parent.kill()
        parent.wait()
        wait_for(lambda: not any(psutil.pid_exists(pid) for pid in pids))


@pytest.mark.skipif(not _PROCESSES.exists(), reason="the processes are counted as Linux lists them")
def test_no_forked_process_outlives_its_lesson(strip: Document, monkeypatch: pytest.MonkeyPatch) -> None:
    """Cancelled, interrupted, killed: while one process brings the piece to rest and others rehearse it."""
    monkeypatch.setattr(jobs_, "AT_ONCE", 3)
    jobs = Jobs()
    ways: dict[str, Callable[[JobStatus, int], object]] = {
        "ended": lambda told, _: jobs.end(told.job),
        "interrupted": lambda _, pid: os.kill(pid, signal.SIGINT),
        "killed": lambda _, pid: os.kill(pid, signal.SIGKILL),
    }
    try:
        begun = {way: jobs.start(way, PressRequest(whole=True), strip) for way in ways}
        everyone = []
        for way, told in begun.items():
            wait_for(lambda told=told: len(forked_by(jobs, told)) == 2)
            assert jobs.status(told.job).files == ("handout-a4.pdf",), "the first handout is there"
            pid = pid_of(jobs, told)
            everyone += [pid, *forked_by(jobs, told)]
            ways[way](told, pid)
        wait_for(lambda: not any(psutil.pid_exists(pid) for pid in everyone))
        states = {way: finish(jobs.status, told)[-1].state for way, told in begun.items()}
        assert states == {"ended": "ended", "interrupted": "failed", "killed": "failed"}
        assert jobs.file(begun["killed"].job, "handout-a4.pdf").startswith(b"%PDF")
    finally:
        jobs.close()


def pid_of(jobs: Jobs, told: JobStatus) -> int:
    """Return the process of a job; 0 before it has one."""
    process = jobs._jobs[told.job].process
    return process.pid if process else 0


def forked_by(jobs: Jobs, told: JobStatus) -> list[int]:
    """Return the processes that the process of a job has forked."""
    pid = pid_of(jobs, told)
    children = _PROCESSES / f"{pid}/task/{pid}/children"
    return [int(each) for each in children.read_text().split()] if pid and children.exists() else []


def test_a_piece_comes_to_rest(studio: Client, chain: Document) -> None:
    """Every band keeps about its own length, no strand passes another, and all is told as it goes.

    A band that is pulled nowhere is as long as at rest, π(bore + thickness) = 47 mm; here each is pulled a
    little, and pressed a little where others go round it.
    """
    told = studio.post("/api/jobs", {"piece": "s", "job": {"do": "rest"}, "document": chain}).json()
    heard = [told]
    while told["state"] in ("waiting", "running"):
        told = studio.get(f"/api/jobs/{told['job']}?seen={told['serial']}").json()
        heard.append(told)
    assert told["state"] == "done", told
    shares = [each["done"] for each in heard if each.get("total")]
    assert shares == sorted(shares)
    rest = studio.get(f"/api/jobs/{told['job']}/files/rest.json").json()
    assert rest["settled"]
    assert rest["crossings"] == 0
    assert [s["band"] for s in rest["strands"] if s["band"]] == [1, 2, 3, 4, 5, 6, 7]
    every = []
    for strand in rest["strands"]:
        points = [strand["points_mm"][i : i + 3] for i in range(0, len(strand["points_mm"]), 3)]
        assert len(points) == len(strand["tension_n"])
        if strand["band"]:
            every += points
            length = sum(math.dist(a, b) for a, b in zip(points, points[1:] + points[:1], strict=True))
            assert length == pytest.approx(math.pi * 15.0, rel=0.15)
    wide = max(p[0] for p in every) - min(p[0] for p in every)
    assert rest["length_mm"] == pytest.approx(wide + 1.5, abs=3.0)  # and how they lie in the clip


def test_a_rehearsal_is_told_as_the_workshop_has_it(studio: Client, chain: Document) -> None:
    """The worst spots with their way back and pictures; every band that falls is one of the piece."""
    request = {"do": "rehearse", "language": "de"}
    told = studio.post("/api/jobs", {"piece": "s", "job": request, "document": chain}).json()
    while told["state"] in ("waiting", "running"):
        told = studio.get(f"/api/jobs/{told['job']}?seen={told['serial']}").json()
    assert told["state"] == "done", told
    found = studio.get(f"/api/jobs/{told['job']}/files/rehearsal.json").json()
    made = work(read_pattern(encode(chain)).pattern)  # type: ignore[arg-type]
    own = rehearse_piece(made)
    assert found["tried"] == own.tried
    assert found["heat"] == pytest.approx(own.heat, abs=1e-4)
    assert [spot["lost"] for spot in found["spots"]] == pytest.approx(
        [trouble.expected for trouble in own.troubles[:5]], abs=1e-3
    )
    worst = found["spots"][0]
    assert worst["proved"]
    assert 0 < len(worst["falls"]) <= len(made.proof.verdicts)
    assert "Schlaufe" in worst["slip"], "it speaks German"
    assert worst["wrong"]["svg"] != worst["right"]["svg"]
    assert worst["back"]


def test_a_piece_is_fitted_to_a_wrist(studio: Client, chain: Document) -> None:
    """Pulled harder it is longer; it is offered the extension bands that make it fit, and then it does.

    An elastic bracelet is made 0.85 to 1.0 of the wrist (common practice, no source).
    """

    def measured(document: Document) -> Any:
        request = {"do": "measure"}
        told = studio.post("/api/jobs", {"piece": "s", "job": request, "document": document}).json()
        while told["state"] in ("waiting", "running"):
            told = studio.get(f"/api/jobs/{told['job']}?seen={told['serial']}").json()
        assert told["state"] == "done", told
        return studio.get(f"/api/jobs/{told['job']}/files/measured.json").json()

    def ask(document: Document, wrist: str) -> Any:
        body = {"document": document, "measured": measured(document), "wrist": wrist}
        return body["measured"], studio.post("/api/fit", body).json()

    before, told = ask(chain, "16 cm")
    assert before["pulls"] == sorted(before["pulls"])
    lengths = [mm for _, mm in before["pulls"]]
    assert lengths == sorted(lengths)
    assert told["wrist_mm"] == 160
    assert told["fit"]["worn"]["feel"] == "tight"
    assert told["extension"] > 0
    after, told = ask(told["document"], "16 cm")
    assert after["extension"] > 0
    assert 0.85 * 160 <= after["length_mm"] <= 160
    assert told["fit"]["worn"]["feel"] in ("easy", "snug")
    low, high = told["fit"]["wrists_mm"]
    assert low <= 160 <= high
    assert {f["code"] for f in ask(chain, "no wrist")[1]["findings"]} == {"wrist-unreadable"}


def test_no_code_of_the_current_folder_runs(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, jobs: Jobs, chain: Document
) -> None:
    """A module that lies beside the pieces was loaded by every job."""
    (tmp_path / "msgspec.py").write_text("open('ran', 'w').close()\nraise SystemExit\n")
    monkeypatch.chdir(tmp_path)
    status = finish(jobs.status, jobs.start("a", PressRequest(), chain))[-1]
    assert status.state == "done"
    assert not (tmp_path / "ran").exists()
