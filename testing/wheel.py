"""Try a wheel as a stranger would: `python testing/wheel.py WHEEL FOLDER [PYTHON…]`.

For every interpreter: a fresh environment, the wheel and nothing else, nothing else on the path (no node),
another working folder; then the demo of one piece, a lesson of a new one, and the studio's page.
"""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import time
import urllib.request
from pathlib import Path

SUPPORTED = ("3.11", "3.12", "3.13")
ADDRESS = "http://127.0.0.1:8979"


def main(wheel: Path, folder: Path, pythons: list[str]) -> None:
    """Try the wheel on every interpreter that is there; say which are not."""
    tried = 0
    for name in pythons or SUPPORTED:
        python = find_interpreter(name)
        if python is None:
            print(f"{name}: not here")
            continue
        started = time.perf_counter()
        try_wheel(wheel.resolve(), (folder / Path(name).name).resolve(), python)
        took_s = time.perf_counter() - started
        print(f"{name}: demo, lesson and studio from the wheel, {took_s:.0f} s", flush=True)
        tried += 1
    if not tried:
        raise SystemExit("no interpreter here to try the wheel on")


def find_interpreter(name: str) -> str | None:
    """Return an interpreter that starts: by its path, or by version, on the path or where pyenv keeps it."""
    pyenv = Path(os.environ.get("PYENV_ROOT", Path.home() / ".pyenv")) / "versions"
    for python in (name, f"python{name}", *sorted(map(str, pyenv.glob(f"{name}.*/bin/python")))):
        # A shim of pyenv is on the path for versions that are not chosen, and then starts nothing.
        if (
            shutil.which(python)
            and not subprocess.run([python, "-c", ""], check=False, capture_output=True).returncode
        ):
            return python
    return None


def try_wheel(wheel: Path, folder: Path, python: str) -> None:
    """Install the wheel with one interpreter and use it; anything that does not work raises."""
    shutil.rmtree(folder, ignore_errors=True)
    folder.mkdir(parents=True)
    subprocess.run([python, "-m", "venv", folder / "env"], check=True)
    command = folder / "env/bin/pegwright"
    pip = [folder / "env/bin/python", "-m", "pip", "install", "--quiet", "--disable-pip-version-check", wheel]
    subprocess.run(pip, check=True)
    bare = {"PATH": str(folder / "env/bin"), "HOME": str(folder), "LANG": os.environ.get("LANG", "C.UTF-8")}

    def run(*arguments: str) -> None:
        ran = subprocess.run(
            [command, *arguments], cwd=folder, env=bare, check=False, capture_output=True, text=True
        )
        if ran.returncode:
            raise SystemExit(f"{python}: pegwright {' '.join(arguments)}:\n{ran.stdout}{ran.stderr}")

    run("demo", "demo", "--only", "ebb-line")
    run("new", "mine.json")
    run("lesson", "mine.json", "--folder", "lesson", "--no-picture", "--parts", "handout")
    assert list((folder / "demo/ebb-line").glob("*.pdf"))
    assert list((folder / "lesson").rglob("*.pdf"))
    studio = subprocess.Popen(
        [command, "studio", "pieces", "--port", ADDRESS.rpartition(":")[2], "--no-browser"],
        cwd=folder,
        env=bare,
        stdout=subprocess.DEVNULL,
    )
    try:
        page = fetch(ADDRESS)
        assert b"<script" in page
        assert b"svelte" in fetch(f"{ADDRESS}/LICENCES.md")
    finally:
        studio.terminate()
        studio.wait(20)


def fetch(address: str) -> bytes:
    """Return the page as soon as it is served, within a minute."""
    for _ in range(120):
        try:
            with urllib.request.urlopen(address, timeout=5) as answer:
                return bytes(answer.read())
        except OSError:
            time.sleep(0.5)
    raise SystemExit(f"nothing is served at {address}")


if __name__ == "__main__":
    main(Path(sys.argv[1]), Path(sys.argv[2]), sys.argv[3:])
