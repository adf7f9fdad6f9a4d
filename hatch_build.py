"""Puts into the wheel the built-in pieces, and the studio's page with the licences of its libraries."""

from __future__ import annotations

import shutil
import subprocess
from pathlib import Path
from typing import Any

from hatchling.builders.hooks.plugin.interface import BuildHookInterface

PAGE = "src/pegwright/server/page"


class PageHook(BuildHookInterface):  # type: ignore[misc]
    """Runs for wheels only: an editable install takes the page from where `make frontend` builds it."""

    def initialize(self, version: str, build_data: dict[str, Any]) -> None:
        """Build the page unless this is an editable install; without npm, take the page that was built.

        Raises:
            SystemExit: there is neither; one sentence, where an error would show a trace of the builder.
        """
        if version == "editable":
            return
        frontend = Path(self.root) / "frontend"
        npm = shutil.which("npm")
        if npm is not None:
            for command in (["ci"], ["run", "build"]):
                subprocess.run([npm, *command], cwd=frontend, check=True)
        elif not (Path(self.root) / PAGE / "index.html").is_file():
            raise SystemExit(
                "Building Pegwright from its source needs Node.js with npm (20.19, or 22.12 and newer)"
                " for the studio's page; installing its wheel does not."
            )
        build_data["artifacts"].append(f"/{PAGE}")
        pieces = Path(self.root) / "examples"
        for piece in pieces.rglob("*.json"):
            build_data["force_include"][str(piece)] = f"pegwright/examples/{piece.relative_to(pieces)}"
