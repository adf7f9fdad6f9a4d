"""The command line: a thin door on the workshop."""

from pegwright.cli.commands import main

__all__ = ["main"]
