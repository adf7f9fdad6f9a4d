"""Try a wheel as a stranger would: `python testing/wheel.py WHEEL FOLDER [PYTHON…]`.

For every interpreter: a fresh environment, the wheel and nothing else, no node on the path, another working
folder; then the demo of one piece, a lesson of a new one, and the studio's page.
"""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import time
import urllib.request
from pathlib import Path

SUPPORTED = ("python3.11", "python3.12", "python3.13")
ADDRESS = "http://127.0.0.1:8979"


def main(wheel: Path, folder: Path, pythons: list[str]) -> None:
    """Try the wheel on every interpreter that is there; say which are not."""
    tried = 0
    for python in pythons or SUPPORTED:
        if subprocess.run([python, "-c", ""], check=False, capture_output=True).returncode:
            print(f"{python}: not here")
            continue
        started = time.perf_counter()
        try_wheel(wheel.resolve(), (folder / Path(python).name).resolve(), python)
        print(f"{python}: demo, lesson and studio from the wheel, {time.perf_counter() - started:.0f} s")
        tried += 1
    if not tried:
        raise SystemExit("no interpreter here to try the wheel on")


def try_wheel(wheel: Path, folder: Path, python: str) -> None:
    """Install the wheel with one interpreter and use it; anything that does not work raises."""
    shutil.rmtree(folder, ignore_errors=True)
    folder.mkdir(parents=True)
    subprocess.run([python, "-m", "venv", folder / "env"], check=True)
    command = folder / "env/bin/pegwright"
    pip = [folder / "env/bin/python", "-m", "pip", "install", "--quiet", "--disable-pip-version-check", wheel]
    subprocess.run(pip, check=True)
    bare = {"PATH": "/usr/bin:/bin", "HOME": str(folder), "LANG": os.environ.get("LANG", "C.UTF-8")}

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
