"""Compiled kernels on disk: nobody else's, never a damaged one, and never code from the current folder."""

from __future__ import annotations

import os
import pickle
import subprocess
import sys
import tempfile
from pathlib import Path

import pytest

from pegwright.shape import kernel_cache, kernel_compilation
from pegwright.shape.kernel_cache import private_folder

posix = pytest.mark.skipif(os.name != "posix", reason="owners and modes are those of a POSIX system")
compiled = pytest.mark.skipif(os.environ.get("NUMBA_DISABLE_JIT") == "1", reason="nothing is kept uncompiled")

ROOT = str(Path(kernel_cache.__file__).parents[2])
#: One kernel compiled; then whether its code came from the cache.
WORK = """
import sys
from pegwright.shape.rubber import _energy_and_stress as kernel
print(round(kernel(0, 0.1, 0.1, 0.05, 1.5)[1], 6), sum(kernel.stats.cache_hits.values()))
"""


class Planted:
    """A pickle that leaves a mark when it is loaded."""

    def __init__(self, mark: Path) -> None:
        self.mark = mark

    def __reduce__(self):
        return (Path.touch, (self.mark,))


def run(cache: Path, *, cwd: Path | None = None, **space: str) -> list[str]:
    """Compile one kernel in a fresh process; the stress it gives, and how often the cache served it."""
    done = subprocess.run(
        [sys.executable, "-P", "-c", WORK],
        env={**os.environ, "PYTHONPATH": ROOT, "NUMBA_CACHE_DIR": str(cache), **space},
        cwd=cwd,
        capture_output=True,
        text=True,
        check=True,
    )
    return done.stdout.split()


@pytest.fixture(scope="module")
def filled(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, str]:
    """A cache with one kernel, and the stress that this gives."""
    cache = tmp_path_factory.mktemp("kernels")
    cache.chmod(0o700)
    stress, hits = run(cache)
    assert hits == "0"
    return cache, stress


def files(cache: Path, ending: str) -> list[Path]:
    found = sorted(cache.rglob(f"*{ending}"))
    assert found
    return found


@compiled
def test_second_process_finds_what_the_first_kept(filled: tuple[Path, str]) -> None:
    cache, stress = filled
    assert run(cache) == [stress, "1"]


@compiled
@posix
def test_a_mask_that_hides_nothing_keeps_kernels_private_all_the_same(tmp_path: Path) -> None:
    """Where new files may be written by all (umask 000), the second process finds what the first kept."""
    cache = tmp_path / "kernels"
    cache.mkdir(mode=0o700)
    before = os.umask(0)
    try:
        stress, hits = run(cache)
        assert hits == "0"
        assert run(cache) == [stress, "1"]
    finally:
        os.umask(before)


@compiled
@pytest.mark.parametrize("ending", [".nbi", ".nbc"])
@pytest.mark.parametrize("damage", ["empty", "torn", "altered", "planted"])
def test_a_damaged_file_is_never_loaded_and_is_made_anew(
    filled: tuple[Path, str], tmp_path: Path, ending: str, damage: str
) -> None:
    """Whatever a file holds, the answer is the same, nothing planted runs, the next process finds code."""
    cache, stress = filled
    run(cache)
    mark = tmp_path / "ran"
    for path in files(cache, ending):
        data = path.read_bytes()
        altered = data[:-9] + bytes([data[-9] ^ 1]) + data[-8:]
        broken = {"empty": b"", "torn": data[: len(data) // 2], "altered": altered}
        path.write_bytes(broken.get(damage) if damage != "planted" else pickle.dumps(Planted(mark)))
    assert run(cache) == [stress, "0"]
    assert not mark.exists()
    assert run(cache) == [stress, "1"]


@compiled
@posix
def test_a_cache_that_others_can_write_to_is_not_used(filled: tuple[Path, str], tmp_path: Path) -> None:
    """A folder with room for all, or a link to another, keeps nothing and serves nothing."""
    _, stress = filled
    shared = tmp_path / "shared"
    shared.mkdir()
    shared.chmod(0o777)
    assert run(shared) == [stress, "0"]
    assert run(shared) == [stress, "0"]
    assert not list(shared.rglob("*.nb?"))
    elsewhere = tmp_path / "elsewhere"
    elsewhere.mkdir()
    linked = tmp_path / "linked"
    linked.mkdir(mode=0o700)
    (linked / "pegwright-kernels").symlink_to(elsewhere)
    assert run(linked) == [stress, "0"]
    assert not list(elsewhere.rglob("*.nb?"))


@compiled
@posix
def test_a_file_that_others_can_write_to_is_not_loaded(filled: tuple[Path, str]) -> None:
    cache, stress = filled
    run(cache)
    for path in files(cache, ".nbc"):
        path.chmod(0o666)
    assert run(cache) == [stress, "0"]


@compiled
def test_without_a_place_kernels_still_work(filled: tuple[Path, str], tmp_path: Path) -> None:
    """A cache that is a file, or lies below one, is none; nothing is left beside the source or here."""
    _, stress = filled
    blocked = tmp_path / "blocked"
    blocked.write_text("a file")
    here = tmp_path / "here"
    here.mkdir()
    assert run(blocked, cwd=here) == [stress, "0"]
    relative = run(Path("relative"), cwd=here, XDG_CACHE_HOME="relative", HOME=str(blocked))
    assert relative[0] == stress
    assert not list(here.iterdir())
    source = Path(kernel_cache.__file__).parent
    assert not any(path.stat().st_mtime > blocked.stat().st_mtime for path in source.rglob("*.nb?"))


@posix
@pytest.mark.parametrize(("mode", "private"), [(0o700, True), (0o755, True), (0o770, False), (0o707, False)])
def test_private_means_that_nobody_else_can_write(tmp_path: Path, mode: int, private: bool) -> None:
    folder = tmp_path / "cache" / "version"
    folder.mkdir(parents=True)
    folder.parent.chmod(0o700)
    folder.chmod(mode)
    assert private_folder(folder) is private


@posix
@pytest.mark.parametrize("open_to", ["home", "home and temporary files"])
def test_a_home_that_others_can_write_to_gives_way_to_a_folder_of_ones_own(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, open_to: str
) -> None:
    """Kernels then lie among the temporary files, for this user alone; where that is open too, nowhere."""
    home, temporary = tmp_path / "home", tmp_path / "temporary"
    for folder in (home, temporary):
        folder.mkdir()
    home.chmod(0o777)
    temporary.chmod(0o1777 if open_to == "home" else 0o777)  # sticky, or not
    for name in ("NUMBA_CACHE_DIR", "XDG_CACHE_HOME"):
        monkeypatch.delenv(name, raising=False)
    monkeypatch.setenv("HOME", str(home))
    monkeypatch.setattr(tempfile, "tempdir", str(temporary))
    found = kernel_cache.cache_folder.__wrapped__()
    if open_to == "home":
        assert found is not None
        assert found.parent == temporary / f"pegwright-kernels-{os.geteuid()}"
        assert found.parent.stat().st_mode & 0o777 == 0o700
    else:
        assert found is None


@compiled
def test_helper_runs_nothing_from_the_current_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Modules that lie beside the pieces are not imported, even where the current folder is on our path."""
    mark = tmp_path / "ran"
    for name in ("msgspec", "numpy", "sitecustomize"):
        (tmp_path / f"{name}.py").write_text(f"from pathlib import Path\nPath({str(mark)!r}).touch()\n")
    monkeypatch.chdir(tmp_path)
    monkeypatch.setattr(sys, "path", ["", str(tmp_path), *sys.path])
    monkeypatch.setattr(kernel_compilation, "_COMPILE", "import msgspec, numpy, pegwright.shape")
    helper = kernel_compilation._spawn_helper()
    assert helper is not None
    assert helper.wait(60) == 0
    assert not mark.exists()
