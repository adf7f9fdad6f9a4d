"""Builds the studio's page with npm and puts it into the wheel."""

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
