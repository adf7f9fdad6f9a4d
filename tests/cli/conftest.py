"""Commands are run in this process and their exit code and words caught."""

from __future__ import annotations

import pytest

from pegwright.cli import main


@pytest.fixture
def run(capsys):
    def call(*arguments):
        with pytest.raises(SystemExit) as exit_:
            main(list(arguments))
        said = capsys.readouterr()
        return exit_.value.code, said.out, said.err

    return call
