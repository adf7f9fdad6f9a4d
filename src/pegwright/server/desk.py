"""The desk: works patterns for the page, remembers the last few, and drops work that nobody waits for."""

from __future__ import annotations

from collections import OrderedDict
from threading import Lock

from pegwright.finding import Finding
from pegwright.pattern import read
from pegwright.pattern.read import Reading
from pegwright.proof import Loss
from pegwright.server.folder import edition_of
from pegwright.workshop import Work, losses, work

_REMEMBERED = 6


class OvertakenError(Exception):
    """The same page has asked for newer work since, so this one was dropped."""


class Desk:
    """Works one pattern at a time; a newer request of the same page overtakes the older ones."""

    def __init__(self) -> None:
        self._turn = Lock()
        self._newest: OrderedDict[str, int] = OrderedDict()
        self._made: OrderedDict[str, Work] = OrderedDict()
        self._losses: OrderedDict[str, dict[int, Loss] | Finding] = OrderedDict()

    def work(self, document: bytes, page: str = "", serial: int = 0) -> Work | Reading:
        """Return what the line makes of a document, or the reading that says why it is none.

        Raises:
            OvertakenError: the page has asked for a higher serial number in the meantime.
        """
        key = edition_of(document)
        known = self._made.get(key)
        if known is not None:
            return known
        reading = read(document)
        if reading.pattern is None:
            return reading
        if page:
            self._newest[page] = max(serial, self._newest.get(page, 0))
            self._newest.move_to_end(page)
            while len(self._newest) > 100:
                self._newest.popitem(last=False)

        def still_wanted(_what: str = "", _done: int = 0, _total: int = 0) -> None:
            if page and self._newest.get(page, serial) > serial:
                raise OvertakenError

        with self._turn:
            still_wanted()
            made = work(reading.pattern, still_wanted)
            self._made[key] = made
            while len(self._made) > _REMEMBERED:
                self._made.popitem(last=False)
        return made

    def lost_with(self, document: bytes, band: int) -> tuple[int, ...] | Finding | None:
        """Return the bands that fall if `band` alone snaps; None where that band is not held anyway.

        A finding says that the piece has too many bands to try each.
        """
        made = self.work(document)
        if isinstance(made, Reading) or band not in made.proof.held:
            return None
        key = edition_of(document)
        with self._turn:
            if key not in self._losses:
                lost = losses(made)
                self._losses[key] = lost if isinstance(lost, Finding) else lost.snaps
                while len(self._losses) > _REMEMBERED:
                    self._losses.popitem(last=False)
            known = self._losses[key]
        return known if isinstance(known, Finding) else known[band].falls
