"""A studio that can be killed and started again at the same folder."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path
from typing import Any


class MortalStudio:
    """The studio's own command at a folder of one piece."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.process: subprocess.Popen[str] | None = None

    def start(self) -> str:
        """Start it and return the address that it prints."""
        command = [sys.executable, "-m", "pegwright", "studio", str(self.folder), "--no-browser"]
        self.process = subprocess.Popen(command, stdout=subprocess.PIPE, text=True)
        assert self.process.stdout is not None
        return self.process.stdout.readline().strip()

    def kill(self) -> None:
        """Kill it, whatever it does."""
        if self.process:
            self.process.kill()
            self.process.wait()

    def document(self) -> dict[str, Any]:
        """Return the piece as it is on the disk."""
        [file] = self.folder.glob("*.json")
        return dict(json.loads(file.read_text("utf-8")))
