"""Commands are run in this process and their exit code and words caught."""

from __future__ import annotations

import tempfile

import pytest

from pegwright.cli import main


@pytest.fixture(scope="session")
def kept():
    with tempfile.TemporaryDirectory() as folder:
        yield folder


@pytest.fixture
def run(capsys, monkeypatch, kept):
    """Nothing is kept in the tester's own folders."""
    monkeypatch.setenv("XDG_CACHE_HOME", kept)

    def call(*arguments):
        with pytest.raises(SystemExit) as exit_:
            main(list(arguments))
        said = capsys.readouterr()
        return exit_.value.code, said.out, said.err

    return call
