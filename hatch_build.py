"""Puts into the wheel the built-in pieces, and the studio's page with the licences of its libraries."""

from __future__ import annotations

import json
import shutil
import subprocess
from pathlib import Path
from typing import Any

from hatchling.builders.hooks.plugin.interface import BuildHookInterface

PAGE = "src/pegwright/server/page"


class PageHook(BuildHookInterface):  # type: ignore[misc]
    """Runs for wheels only: an editable install takes the page from where `make frontend` builds it."""

    def initialize(self, version: str, build_data: dict[str, Any]) -> None:
        """Build the page unless this is an editable install.

        Raises:
            RuntimeError: there is no npm to build it with.
        """
        if version == "editable":
            return
        npm = shutil.which("npm")
        if npm is None:
            raise RuntimeError("npm (Node 20 or newer) is needed to build the studio's page into the wheel")
        frontend = Path(self.root) / "frontend"
        for command in (["ci"], ["run", "build"]):
            subprocess.run([npm, *command], cwd=frontend, check=True)
        build_data["artifacts"].append(f"/{PAGE}")
        licences = Path(self.root) / PAGE / "LICENCES.txt"
        licences.write_text(page_licences(frontend), "utf-8")
        pieces = Path(self.root) / "examples"
        for piece in pieces.rglob("*.json"):
            build_data["force_include"][str(piece)] = f"pegwright/examples/{piece.relative_to(pieces)}"


def page_licences(frontend: Path) -> str:
    """Return the licences of every library that goes into the page.

    Raises:
        RuntimeError: a library comes without one.
    """
    packages = json.loads((frontend / "package-lock.json").read_text("utf-8"))["packages"]
    texts = []
    for path, package in packages.items():
        if not path or package.get("dev") or package.get("optional"):
            continue
        found = sorted(
            p for p in (frontend / path).glob("*") if p.name.upper().startswith(("LICEN", "COPYING"))
        )
        if not found and "license" not in package:
            raise RuntimeError(f"{path} comes without a licence")
        name = f"{path.rpartition('node_modules/')[2]} {package['version']} ({package.get('license', '')})"
        texts.append("\n\n".join([name, *(each.read_text("utf-8").strip() for each in found)]))
    return ("\n\n" + "-" * 80 + "\n\n").join(texts) + "\n"
