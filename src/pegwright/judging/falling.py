"""Why bands fall, or are not proved to hold: one finding for one cause, with what comes of it."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence, Set
from typing import NamedTuple

from pegwright.finding import Finding, Location, Phrase, finding, phrase, sum_up
from pegwright.loom import Fastened, History, step_numbers
from pegwright.proof import FirstLoose, NotProved, Proof, find_first_loose

FALL_CODES = frozenset({"band-falls", "fall-with-it", "band-not-proved"})
"""The codes of the findings by which `find_falling` tells of a fall."""
_OPEN = {"twist": "open-twist", "across": "open-across", "too-long": "open-tangled"}
_NAMED = 4
_MOST_BANDS = (
    300  # in a larger piece it is not asked what comes off on the loom: its maker waits for the answer
)


class _Cause(NamedTuple):
    """Bands that fall for one reason (the name of its phrase), and over which bands."""

    reason: str
    bands: tuple[int, ...]
    over: tuple[int, ...] = ()


def find_falling(history: History, proof: Proof) -> tuple[Finding, ...]:
    """Return a finding for every cause of a fall, and one for every reason why bands are not proved.

    A cause names the bands that start the fall, counts those that hang on these alone, and says after which
    move a band comes off while the piece is still on the loom. What hangs on several causes is counted by
    itself.
    """
    falling = frozenset(proof.free)
    fastened = any(isinstance(e, Fastened) for e in history.events)
    passing = _passing(history)
    causes = _causes(falling, passing) if fastened else []
    if falling and not fastened:
        causes = [_Cause("falls-unfastened", tuple(sorted(falling)))]
    hanging = _hanging(falling, passing, causes)
    loose = _first_loose(history) if fastened and causes else None
    at = _where_told(causes, hanging, loose)
    told = [
        _tell(history, cause, len(hanging[number,]), loose if number == at else None)
        for number, cause in enumerate(causes)
    ]
    shared = sum(len(bands) for numbers, bands in hanging.items() if len(numbers) > 1)
    told += [finding("fall-with-it", bands=shared)] * bool(shared)
    return sum_up((*told, *_tell_unproved(history, proof)))


def _passing(history: History) -> dict[int, frozenset[int]]:
    """Map each band to the others that run through its loops at the end."""
    found: dict[int, set[int]] = defaultdict(set)
    for loop, ribbons in history.final.inside.items():
        found[loop.band].update(bight.band for bight in ribbons)
    return {band: frozenset(others - {band}) for band, others in found.items()}


def _causes(falling: Set[int], passing: Mapping[int, frozenset[int]]) -> list[_Cause]:
    """Return the causes: nothing passes through, all that passes holds and it slides over, or a ring of them.

    Bands slide off together where the same bands that hold run through them.
    """
    groups: dict[tuple[str, tuple[int, ...]], list[int]] = defaultdict(list)
    for band in sorted(falling):
        others = passing.get(band, frozenset())
        if not others:
            groups["falls-passed-by-none", ()].append(band)
        elif others - falling:
            groups["falls-off", tuple(sorted(others - falling))].append(band)
    reached = _below([band for bands in groups.values() for band in bands], falling, passing)
    found = [_Cause(reason, tuple(bands), over) for (reason, over), bands in groups.items()]
    left = set(falling - reached)
    while left:
        ring = _bands_joined_to(min(left), left, passing)
        found.append(_Cause("falls-together", tuple(sorted(ring))))
        left -= ring
    return sorted(found, key=lambda cause: (cause.reason == "falls-together", cause.bands))


def _below(roots: Iterable[int], falling: Set[int], passing: Mapping[int, frozenset[int]]) -> set[int]:
    """Return the roots, and the falling bands that these run through, or that hang on such bands."""
    carried: dict[int, list[int]] = defaultdict(list)
    for band in falling:
        for other in passing.get(band, ()):
            carried[other].append(band)
    reached, waiting = set(roots), list(roots)
    while waiting:
        for band in carried[waiting.pop()]:
            if band not in reached:
                reached.add(band)
                waiting.append(band)
    return reached


def _bands_joined_to(band: int, among: Set[int], passing: Mapping[int, frozenset[int]]) -> set[int]:
    """Return the bands that hang together with one of them."""
    found: set[int] = set()
    waiting = {band}
    while waiting:
        found |= waiting
        ahead = {other for one in waiting for other in passing.get(one, ())}
        behind = {other for other in among if not waiting.isdisjoint(passing.get(other, ()))}
        waiting = (ahead | behind) & among - found
    return found


def _hanging(
    falling: Set[int], passing: Mapping[int, frozenset[int]], causes: Sequence[_Cause]
) -> Mapping[tuple[int, ...], list[int]]:
    """Map the numbers of causes to the bands that fall with just these."""
    starting = {band for cause in causes for band in cause.bands}
    on: dict[int, list[int]] = defaultdict(list)
    for number, cause in enumerate(causes):
        for band in _below(cause.bands, falling, passing) - starting:
            on[band].append(number)
    found: dict[tuple[int, ...], list[int]] = defaultdict(list)
    for band, numbers in on.items():
        found[tuple(numbers)].append(band)
    return found


def _first_loose(history: History) -> FirstLoose | None:
    if history.final.bands > _MOST_BANDS:
        return None
    every = frozenset(range(1, history.final.bands + 1))
    return find_first_loose([done.events for done in history.moves], history.board.spots, every)


def _where_told(
    causes: Sequence[_Cause], hanging: Mapping[tuple[int, ...], list[int]], loose: FirstLoose | None
) -> int | None:
    """Return the number of the cause that tells of the band that comes off first: its own, or the first."""
    if loose is None:
        return None
    own = (n for n, cause in enumerate(causes) if loose.band in (*cause.bands, *hanging[n,]))
    return next(own, 0)


def _tell(history: History, cause: _Cause, hanging: int, loose: FirstLoose | None) -> Finding:
    laid = _laid_at(history)
    path, step = laid[cause.bands[0]]
    if loose is not None:
        path, step = history.moves[loose.at].path, step_numbers(history)[loose.at]
    reason = phrase(
        cause.reason,
        named=_name_bands(history, cause.bands),
        count=len(cause.bands),
        over=_name_bands(history, cause.over),
        passing=len(cause.over),
    )
    return finding(
        "band-falls",
        Location(path=path, step=step, band=loose.band if loose else cause.bands[0]),
        bands=cause.bands,
        count=len(cause.bands),
        reason=reason,
        hanging=hanging,
        loose=loose.band if loose else 0,
        colour=history.colours[loose.band - 1] if loose else "",
        since=phrase("place-step", step=step),
    )


def _tell_unproved(history: History, proof: Proof) -> Iterable[Finding]:
    groups: dict[str, list[int]] = defaultdict(list)
    for band in proof.unproved:
        verdict = proof.verdicts[band]
        assert isinstance(verdict, NotProved)
        groups[verdict.reason].append(band)
    laid = _laid_at(history) if groups else {}
    for reason, bands in groups.items():
        path, step = laid[bands[0]]
        place = Location(path=path, step=step, band=bands[0])
        named = _name_bands(history, bands)
        yield finding(
            "band-not-proved",
            place,
            bands=tuple(bands),
            count=len(bands),
            named=named,
            reason=phrase(_OPEN[reason]),
        )


def _laid_at(history: History) -> dict[int, tuple[str, int]]:
    """Map each band to the document path and the number of the move that laid it."""
    found: dict[int, tuple[str, int]] = {}
    band = 0
    for number, done in zip(step_numbers(history), history.moves, strict=True):
        for _ in range(done.after.bands - band):
            band += 1
            found[band] = (done.path, number)
    return found


def _name_bands(history: History, bands: Sequence[int]) -> tuple[Phrase, ...]:
    """Name the first few bands, or runs of them, and say how many more there are."""
    runs: list[list[int]] = []
    for band in bands:
        if runs and runs[-1][-1] == band - 1:
            runs[-1].append(band)
        else:
            runs.append([band])
    parts = [part for run in runs for part in ([run] if len(run) > 2 else [[band] for band in run])]
    named = [
        phrase("span", first=part[0], last=part[-1])
        if len(part) > 1
        else phrase("band-named", band=part[0], colour=history.colours[part[0] - 1])
        for part in parts[:_NAMED]
    ]
    more = sum(map(len, parts[_NAMED:]))
    return (*named, *([phrase("so-many-more", count=more)] if more else []))
