"""What several tests of the planner look at, planned once."""

from __future__ import annotations

import pytest

from examples.pieces import PIECES
from pegwright.planner import Proposals, propose, without_working


@pytest.fixture(scope="session")
def planned() -> dict[str, Proposals]:
    """The chains, the strip and the mat of the workshop with their own working set aside."""
    names = ("ebb-line", "twin-hulls", "riding-lights", "slack-water-mat")
    return {name: propose(without_working(PIECES[name]()), most=3, seconds=60, tries=24) for name in names}
