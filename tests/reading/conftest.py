"""The built-in pieces, worked once."""

from __future__ import annotations

import pytest

from pegwright.workshop import example_files, open_pattern, work


@pytest.fixture(scope="session")
def pieces():
    return {name: work(open_pattern(path).pattern) for name, path in example_files().items()}
