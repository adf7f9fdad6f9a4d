"""A measured figure, and how a bench's figures are printed."""

from __future__ import annotations

import json
import os
import platform
from typing import NamedTuple


class Figure(NamedTuple):
    """One measured number with its unit; `goal` and `met` where there is a goal."""

    name: str
    value: float
    unit: str = ""
    goal: str = ""
    met: bool | None = None


def machine() -> str:
    """Say what the figures were measured on."""
    return f"{platform.machine()}, {os.cpu_count()} cores, Python {platform.python_version()}"


def as_json(bench: str, figures: list[Figure]) -> str:
    """Return the figures as one JSON object."""
    return json.dumps(
        {"bench": bench, "machine": machine(), "figures": [figure._asdict() for figure in figures]}, indent=2
    )


def as_table(bench: str, figures: list[Figure]) -> str:
    """Return the figures as a table."""
    wide = max(len(figure.name) for figure in figures)
    lines = [f"{bench} on {machine()}"]
    for figure in figures:
        mark = {True: "met", False: "NOT MET", None: ""}[figure.met]
        measured = f"{figure.value:>12.6g} {figure.unit:<12} {figure.goal:<12}"
        lines.append(f"  {figure.name:<{wide}}  {measured} {mark}".rstrip())
    return "\n".join(lines)
