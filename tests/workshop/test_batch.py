"""A batch on a real scheduler with real workers: one is killed, one task is poison, and it starts again."""

from __future__ import annotations

import hashlib
import json
import os
import signal
from collections.abc import Iterator
from pathlib import Path

import html5lib
import msgspec
import pytest

from pegwright.cli import main
from pegwright.finding import RefusedError
from pegwright.pattern import Pattern, write_pattern
from pegwright.variants import TECHNIQUES, read_band_colours
from pegwright.workshop import (
    BatchCluster,
    BatchFailure,
    BatchOrder,
    BatchRun,
    VariantOrder,
    batch_cluster,
    connect_cluster,
    run_batch,
    start_cluster,
    starter_pattern,
    write_gallery,
)
from pegwright.workshop.batch import _Clock
from pegwright.workshop.batch_engine import run_tasks
from pegwright.workshop.batch_tasks import (
    BatchResult,
    BatchTask,
    VariantResult,
    VariantTask,
    do_task,
    do_variant_task,
    source_digest,
)
from testing.batch_faults import wait_or_fail

ROOT = Path(__file__).parents[2]
COLOURS = read_band_colours("slate=#34506b, foam white=#f2efe6, buoy red=#c23b2a")
ORDER = BatchOrder(
    parts=("pattern", "captions"),
    languages=("de",),
    hands=("right", "left"),
    variants=VariantOrder(colourways=2),
)


@pytest.fixture(scope="module")
def cluster(tmp_path_factory: pytest.TempPathFactory) -> Iterator[BatchCluster]:
    scratch = tmp_path_factory.mktemp("scratch")
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("tempfile.tempdir", str(scratch))
        # The workers find what stands in for a task; they themselves look for nothing in the current folder.
        patch.setenv(
            "PYTHONPATH", os.pathsep.join([str(ROOT), *filter(None, [os.environ.get("PYTHONPATH")])])
        )
        with start_cluster(2) as started:
            yield started
    assert not list(scratch.glob("pegwright-*")), "killed workers or not, nothing stays behind"


def patterns() -> dict[str, Pattern]:
    return {f"chain-{pegs}": starter_pattern(f"Chain of {pegs}", pegs=pegs) for pegs in (4, 6)}


@pytest.fixture(scope="module")
def made(cluster: BatchCluster, tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, BatchRun]:
    folder = tmp_path_factory.mktemp("batch")
    return folder, run_batch(patterns(), ORDER, folder, cluster, colours=COLOURS)


def digests(folder: Path) -> dict[str, str]:
    return {
        str(path.relative_to(folder)): hashlib.sha256(path.read_bytes()).hexdigest()
        for path in sorted(folder.rglob("*"))
        if path.is_file()
    }


def test_everything_ordered_is_there_and_nothing_else(made: tuple[Path, BatchRun]) -> None:
    folder, run = made
    assert run.failures == ()
    assert run.known == 0
    expected = {
        f"chain-{pegs}/colours-{way}/{language}"
        for pegs in (4, 6)
        for way in (1, 2)
        for language in ("de", "de-left")
    }
    assert {place.folder for place in run.places} == expected
    for place in run.places:
        assert place.holds
        home = folder / place.folder
        assert {str(p.relative_to(home)) for p in home.rglob("*") if p.is_file()} == {
            *place.files,
            "made.json",
        }
        for name, digest in place.files.items():
            assert hashlib.sha256((home / name).read_bytes()).hexdigest() == digest


def test_started_again_it_makes_only_what_is_missing(
    made: tuple[Path, BatchRun], cluster: BatchCluster
) -> None:
    folder, run = made
    before = digests(folder)
    (folder / "chain-4/colours-1/de/pattern.json").write_text("spoilt")
    (folder / "chain-6/colours-2/de/made.json").unlink()
    again = run_batch(patterns(), ORDER, folder, cluster, colours=COLOURS)
    assert again.known == len(run.places) - 2
    assert again.places == run.places
    assert digests(folder) == before


def test_another_order_is_made_anew_in_its_place(made: tuple[Path, BatchRun], cluster: BatchCluster) -> None:
    folder, run = made
    order = msgspec.structs.replace(ORDER, parts=("pattern",), variants=VariantOrder())
    changed = run_batch(patterns(), order, folder, cluster)
    assert changed.known == 0
    assert len(changed.places) == 4
    assert {place.variant for place in changed.places} == {"same"}
    assert len(run.places) == 8


def test_the_bytes_are_the_same_here_and_on_a_worker(made: tuple[Path, BatchRun]) -> None:
    folder, _ = made
    pattern = (folder / "chain-6/colours-1/de/pattern.json").read_bytes()
    task = BatchTask(source=source_digest(), pattern=pattern, parts=ORDER.parts, language="de", hand="left")
    here = msgspec.msgpack.decode(do_task(msgspec.msgpack.encode(task)), type=BatchResult)
    for name, data in here.files.items():
        assert (folder / "chain-6/colours-1/de-left" / name).read_bytes() == data


def test_a_killed_worker_a_poisoned_task_and_a_bad_one(cluster: BatchCluster) -> None:
    """Nothing is lost but the poison, and only that and the bad one are failures."""
    tasks = [b"%d" % number for number in range(40)] + [b"poison", b"bad"]
    outcomes = {}
    for outcome in run_tasks(cluster, wait_or_fail, tasks):
        assert outcome.number not in outcomes
        outcomes[outcome.number] = outcome
        if len(outcomes) == 8:
            os.kill(cluster.process_ids()[0], signal.SIGKILL)
    assert len(outcomes) == 42
    assert all(outcomes[n].result == b"%d done" % n for n in range(40))
    assert outcomes[40].lost
    assert not outcomes[41].lost
    assert "this one cannot be made" in outcomes[41].error


def test_another_version_on_a_worker_is_a_failure_not_a_result(cluster: BatchCluster) -> None:
    pattern = write_pattern(starter_pattern("Chain", pegs=4))
    task = msgspec.msgpack.encode(BatchTask(source="another", pattern=pattern, parts=("pattern",)))
    (outcome,) = run_tasks(cluster, do_task, [task])
    assert outcome.result is None
    assert "another version" in outcome.error


def test_an_existing_cluster_does_the_same(
    made: tuple[Path, BatchRun], cluster: BatchCluster, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    del made
    address = cluster.client.scheduler.address
    with connect_cluster(address) as other:
        assert other.process_ids() == []
        assert other.threads() >= 1
    piece = tmp_path / "Näh & Ebb.json"
    piece.write_bytes(write_pattern(starter_pattern("Ebb", pegs=4)))
    asked = [
        "batch",
        str(piece),
        "--out",
        str(tmp_path / "out"),
        "--parts",
        "pattern",
        "--scheduler",
        address,
    ]
    for made_now, known in ((1, 0), (0, 1)):
        with pytest.raises(SystemExit) as ended:
            main([*asked, "--json"])
        told = json.loads(capsys.readouterr().out)
        assert ended.value.code == 0
        assert (told["made"], told["known"]) == (made_now, known)
        assert told["places"][0]["folder"] == "N-h-Ebb/same/en"


def test_nothing_starts_where_nothing_is_missing(made: tuple[Path, BatchRun]) -> None:
    folder, run = made
    with start_cluster(2) as unused:
        again = run_batch(patterns(), ORDER, folder, unused, colours=COLOURS)
        assert unused.process_ids() == []
    assert again.known == len(run.places)


def test_without_a_scheduler_it_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(batch_cluster, "_CONNECT_S", 0.3)
    with pytest.raises(RefusedError), connect_cluster("tcp://127.0.0.1:1"):
        pass


def test_bad_orders_are_refused(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    for bad in (["--parts", "none"], ["--languages", "xx"], ["--workers", "0"], ["--colourways", "2"]):
        with pytest.raises(SystemExit) as ended:
            main(["batch", "--out", str(tmp_path / "out"), *bad, "--json"])
        assert ended.value.code == 2
        assert json.loads(capsys.readouterr().out)["ok"] is False


def test_the_page_shows_everything(made: tuple[Path, BatchRun]) -> None:
    folder, run = made
    failed = run._replace(failures=(BatchFailure(folder="chain-9/same/en", why="<b>x</b>"),))
    page = write_gallery(failed, folder, "de").read_bytes()
    tree = html5lib.HTMLParser(strict=True, namespaceHTMLElements=False).parse(page)
    cards = tree.findall(".//article")
    assert len(cards) == 4
    links = {link.get("href") for card in cards for link in card.findall(".//a")}
    assert links == {f"{place.folder}/{name}" for place in run.places for name in place.files}
    for link in links:
        assert (folder / link).is_file()
    assert b"<b>x</b>" not in page
    assert "Was gemacht wurde" in page.decode()


def test_the_time_left_is_told_by_the_pace_so_far() -> None:
    told: list[str] = []
    now = iter([0.0, 10.0, 20.0])
    clock = _Clock(
        lambda what, done, total: told.append(f"{what} {done}/{total}"), "making", 5, 35, now.__next__
    )
    clock.count()
    clock.count()
    assert told == ["making 5/35", "making, about 5 min left 6/35", "making, about 5 min left 7/35"]


def test_bands_and_looms_are_axes_and_a_round_piece_keeps_its_loom() -> None:
    """A piece on a round loom is made on its own, and it is said why."""
    order = VariantOrder(looms=((3, 30),), bands=((15.0, 1.8), (12.0, 1.3)))
    told = {}
    for name in ("chain-1", "tube-6"):
        task = VariantTask(
            source=source_digest(), pattern=write_pattern(TECHNIQUES[name].make(2)), order=order
        )
        done = do_variant_task(msgspec.msgpack.encode(task))
        told[name] = msgspec.msgpack.decode(done, type=VariantResult)
    assert [name for name, _, _ in told["chain-1"].variants] == [
        "loom-3x30-bands-15x1-8",
        "loom-3x30-bands-12x1-3",
    ]
    assert [name for name, _, _ in told["tube-6"].variants] == ["bands-15x1-8", "bands-12x1-3"]
    assert [note.code for note in told["tube-6"].findings if note.severity == "note"] == ["loom-not-straight"]
