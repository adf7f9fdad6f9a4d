"""`python -m bench NAME [--quick] [--json]`: run one bench and print its figures."""

from __future__ import annotations

import argparse
import importlib
from pathlib import Path

from bench.report import as_json, as_table


def names() -> list[str]:
    """Return the benches there are: the modules of this folder that have a `run`."""
    here = Path(__file__).parent
    return sorted(p.stem for p in here.glob("[a-z]*.py") if "\ndef run(" in p.read_text("utf-8"))


def main() -> None:
    """Run the bench named on the command line."""
    parser = argparse.ArgumentParser(prog="python -m bench", description=__doc__)
    parser.add_argument("name", choices=names())
    parser.add_argument("--quick", action="store_true", help="measure the same things on less, in under 50 s")
    parser.add_argument("--json", action="store_true", help="print one JSON object")
    arguments = parser.parse_args()
    figures = importlib.import_module(f"bench.{arguments.name}").run(arguments.quick)
    print(as_json(arguments.name, figures) if arguments.json else as_table(arguments.name, figures))


if __name__ == "__main__":
    main()
