"""Slow, obvious twins of what the program does cleverly."""

from __future__ import annotations

from pegwright.loom import Drawn, Event, Fastened, Laid, Lifted, Moved, Turned


class ListLoom:
    """The machine as lists of lists, changed in place."""

    def __init__(self) -> None:
        self.stacks: dict[str, list[tuple[int, int]]] = {}
        self.inside: dict[tuple[int, int], list[tuple[int, int]]] = {}
        self.turned = False
        self.under: tuple[int, int] | None = None  # of a band laid, the loop that was seated last

    def do(self, event: Event) -> None:
        match event:
            case Laid():
                for bight, holder, _ in event.seats:
                    loops = self.stacks.setdefault(holder, [])
                    loops.insert(0 if event.beneath else len(loops), tuple(bight))
                    self.under = tuple(bight)
            case Drawn():
                if not event.lifted:
                    self.stacks[event.source].remove(tuple(event.bight))
                if event.slid:
                    self.stacks["hook"] = []
                if event.target.startswith("end") and tuple(event.bight) == self.under:
                    self.stacks[event.source] = [tuple(loop) for loop in event.skipped[::-1]]
                self.stacks.setdefault(event.target, []).append(tuple(event.bight))
                for loop in event.through:
                    self.inside.setdefault(tuple(loop), []).append(tuple(event.bight))
            case Moved():
                assert self.stacks[event.source].pop() == tuple(event.bight)
                self.stacks.setdefault(event.target, []).append(tuple(event.bight))
            case Lifted():
                loops = self.stacks[event.holder]
                place = loops.index(tuple(event.bight))
                self.inside.setdefault(tuple(event.bight), []).extend(loops[place + 1 :][::-1])
                del loops[place]
            case Fastened():
                for loop in event.caught:
                    for loops in self.stacks.values():
                        if tuple(loop) in loops:
                            loops.remove(tuple(loop))
            case Turned():
                self.turned = not self.turned
