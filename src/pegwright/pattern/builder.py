"""Write a pattern in Python the way a maker says it.

>>> m = PatternBuilder("Ebb chain", Rows(rows=1, pegs=4)).colour("A", "slate", "#4a5a6a")
>>> for peg in (1, 2, 3):
...     m.place("A", f"A{peg}", f"A{peg + 1}")
>>> m.hook("A3", "A2"); m.hook("A2", "A1"); m.knot("A1")
>>> m.pattern().title
'Ebb chain'
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

from pegwright.pattern.document import VERSION, BandType, Colour, Motif, Pattern, StatedCounts
from pegwright.pattern.layout import Layout
from pegwright.pattern.moves import (
    Bind,
    Clip,
    Extend,
    Hang,
    Hook,
    Knot,
    Lift,
    PatternStep,
    Place,
    Put,
    Repeat,
    Slide,
    Transfer,
    Turn,
    Use,
    Wind,
)
from pegwright.pattern.reader import read_pattern
from pegwright.pattern.writer import write_pattern


class PatternBuilder:
    """Collects what a maker does; `pattern()` freezes it. Any move takes `note`, `warning` and `picture`."""

    def __init__(self, title: str, loom: Layout, **about: Any) -> None:
        self._about: dict[str, Any] = {"title": title, "loom": loom, **about}
        self._bands: list[BandType] = []
        self._colours: list[Colour] = []
        self._motifs: list[Motif] = []
        self._steps: list[PatternStep] = []

    def band(self, name: str, **sizes: Any) -> PatternBuilder:
        """Name a kind of band."""
        self._bands.append(BandType(name=name, **sizes))
        return self

    def colour(self, letter: str, name: str, tint: str, band: str = "standard") -> PatternBuilder:
        """Give a colour its letter."""
        self._colours.append(Colour(letter=letter, name=name, hex=tint, band=band))
        return self

    def place(self, colour: str, *over: str, **more: Any) -> None:
        """Stretch a band over pegs."""
        self._steps.append(Place(colour=colour, over=over, **more))

    def wind(self, colour: str, on: str, turns: int = 3, **more: Any) -> None:
        """Wind a cap band."""
        self._steps.append(Wind(colour=colour, on=on, turns=turns, **more))

    def turn(self, **more: Any) -> None:
        """Turn the loom round."""
        self._steps.append(Turn(**more))

    def hook(self, source: str, target: str, **more: Any) -> None:
        """Hook a loop through those above it on to another peg."""
        self._steps.append(Hook(source=source, target=target, **more))

    def lift(self, at: str, **more: Any) -> None:
        """Lift a loop over those above it and off, on to the peg `target` if one is given."""
        self._steps.append(Lift(at=at, **more))

    def transfer(self, source: str, target: str, **more: Any) -> None:
        """Put the topmost loops on another peg as they lie."""
        self._steps.append(Transfer(source=source, target=target, **more))

    def hang(self, colour: str, turns: int = 3, **more: Any) -> None:
        """Wind a band on the hook's shaft."""
        self._steps.append(Hang(colour=colour, turns=turns, **more))

    def slide(self, source: str, target: str, **more: Any) -> None:
        """Take a loop, slide the hung bands on to it, put it on a peg."""
        self._steps.append(Slide(source=source, target=target, **more))

    def bind(self, colour: str, at: str, **more: Any) -> None:
        """Pull the last band through all loops of a peg."""
        self._steps.append(Bind(colour=colour, at=at, **more))

    def put(self, *on: str, **more: Any) -> None:
        """Put the loops of a free end on a peg, or share them among several."""
        self._steps.append(Put(on=on, **more))

    def extend(self, colour: str, bands: int, **more: Any) -> None:
        """Add a plain chain at a free end."""
        self._steps.append(Extend(colour=colour, bands=bands, **more))

    def knot(self, *at: str, **more: Any) -> None:
        """Tie off the loops."""
        self._steps.append(Knot(at=at, **more))

    def clip(self, *at: str, **more: Any) -> None:
        """Clip ends together."""
        self._steps.append(Clip(at=at, **more))

    def use(self, motif: str, **more: Any) -> None:
        """Work a motif here."""
        self._steps.append(Use(name=motif, **more))

    @contextmanager
    def repeat(self, times: int | str, *, rows: int = 0, pegs: int = 0, **more: Any) -> Iterator[None]:
        """Repeat what is done inside the with-block, moving on each time."""
        outer, self._steps = self._steps, []
        try:
            yield
        finally:
            inner, self._steps = self._steps, outer
        self._steps.append(Repeat(times=times, steps=tuple(inner), rows=rows, pegs=pegs, **more))

    @contextmanager
    def motif(self, name: str, *colours: str, note: str = "", **counts: int) -> Iterator[None]:
        """Define a motif by what is done inside the with-block."""
        outer, self._steps = self._steps, []
        try:
            yield
        finally:
            inner, self._steps = self._steps, outer
        self._motifs.append(Motif(name=name, steps=tuple(inner), colours=colours, counts=counts, note=note))

    def pattern(self, stated: StatedCounts | None = None) -> Pattern:
        """Freeze the pattern.

        Raises:
            ValueError: the document could not be read back; the message names the field and says why.
        """
        pattern = Pattern(
            pegwright=VERSION,
            bands=tuple(self._bands) or (BandType(),),
            colours=tuple(self._colours),
            motifs=tuple(self._motifs),
            steps=tuple(self._steps),
            stated=stated,
            **self._about,
        )
        found = read_pattern(write_pattern(pattern)).findings
        if found:
            raise ValueError("; ".join(f"{f.place}: {f.message}" for f in found[:5]))
        return pattern
