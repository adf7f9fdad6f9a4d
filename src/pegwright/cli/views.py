"""What the commands print, as plain data and as lines; `docs/commands.md` gives the shapes."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from pegwright.loom import print_move, print_state, step_numbers

if TYPE_CHECKING:  # a command loads the rooms that it asks, not those that it only prints of
    from pegwright.fit import Heap, LoomLoads, ShoppingList, Supplies
    from pegwright.judging import SingleFailures
    from pegwright.workshop import Work

_JOBS = ("placed", "caps", "hung", "finishing", "extension")


def verdict(made: Work) -> dict[str, Any]:
    """Return what the proof says: how many bands, whether all hold, which fall, which are open."""
    return {
        "title": made.pattern.title,
        "holds": made.holds,
        "bands": len(made.proof.verdicts),
        "falls": list(made.proof.free),
        "not_proved": list(made.proof.unproved),
        "left_out": made.left_out,
    }


def verdict_lines(made: Work) -> list[str]:
    """Return the verdict in a sentence or two."""
    bands = len(made.proof.verdicts)
    if not bands:
        return ["there is no band in this pattern yet"]
    if made.holds:
        return [f"all {bands} bands are held; the proof has been checked"]
    lines = []
    if made.left_out:
        faults = "one fault" if made.left_out == 1 else f"{made.left_out} faults"
        lines.append(f"not the pattern as it is written: because of {faults}, something was left out")
    if made.proof.free:
        lines.append(f"{len(made.proof.free)} of {bands} bands fall off")
    if made.proof.unproved:
        lines.append(f"{len(made.proof.unproved)} of {bands} bands are not proved either way")
    return lines


def losses(lost: SingleFailures) -> dict[str, Any]:
    """Return what falls with each band that snaps, which take none along, and which loops must be caught."""
    return {
        "snaps": [
            {"band": band, "falls": list(loss.falls), "not_proved": list(loss.unproved)}
            for band, loss in lost.snaps.items()
        ],
        "passengers": list(lost.passengers),
        "caught": [
            {"loop": str(loop), "falls": list(loss.falls), "not_proved": list(loss.unproved)}
            for loop, loss in lost.caught.items()
        ],
    }


def loss_lines(lost: SingleFailures) -> list[str]:
    """Return the same in a few sentences."""
    if not lost.snaps:
        return []
    worst = max(lost.snaps, key=lambda band: len(lost.snaps[band].falls))
    taken = len(lost.snaps[worst].falls)
    lines = [
        f"if one band snaps, at most {taken} others fall (band {worst})"
        if taken
        else "no band takes others along",
        f"{len(lost.passengers)} of {len(lost.snaps)} bands could snap without freeing another",
    ]
    needed = [str(loop) for loop, loss in lost.caught.items() if loss.falls or loss.unproved]
    if needed:
        lines.append(f"the last fastener must catch {', '.join(needed)} (band and loop)")
    return lines


def moves(made: Work, *, states: bool) -> dict[str, Any]:
    """Return every move that was made, with its line, place and note; with `states` the loom after it.

    The loom after every move is long for a long piece: a chain of 10,000 would take a gigabyte.
    """
    numbered = zip(step_numbers(made.history), made.history.moves, strict=True)
    return {
        "title": made.pattern.title,
        "moves": [
            {
                "step": number,
                "move": print_move(done.move),
                **({"state": print_state(done.after)} if states else {}),
                "path": done.path,
                "rounds": [{"path": p, "round": k, "of": n} for p, k, n in done.located.rounds],
                "motif": done.located.motif,
                "note": done.move.note or done.move.warning,
            }
            for number, done in numbered
        ],
    }


def forces(loom: LoomLoads, moves: int) -> list[dict[str, Any]]:
    """Return for every move the bands that lie otherwise after it and the pegs that bear otherwise."""
    forces: list[dict[str, Any]] = [{"bands": [], "loads": []} for _ in range(moves)]
    for one in loom.bands:
        forces[one.at]["bands"].append(
            {
                "band": one.band,
                "on_loom": one.on,
                "pegs": list(one.pegs),
                "stretch": round(one.stretch, 3),
                "tension_n": round(one.tension_n, 3),
                "slack": one.slack,
            }
        )
    for load in loom.loads:
        forces[load.at]["loads"].append(
            {
                "peg": load.peg,
                "x_n": round(load.x_n, 3),
                "y_n": round(load.y_n, 3),
                "n": round(load.load_n, 3),
            }
        )
    return forces


def force_lines(forces: dict[str, Any]) -> list[str]:
    """Return what one move changes, in a line for the bands and a line for the pegs."""
    bands = [
        f"band {one['band']} "
        + (f"at {one['stretch']:.2f} times its length, {one['tension_n']:.2f} N" if one["on_loom"] else "off")
        for one in forces["bands"]
    ]
    pegs = [f"{one['peg']} {one['n']:.1f} N" for one in forces["loads"]]
    return [line for line in (", ".join(bands), "pegs bear " + ", ".join(pegs) if pegs else "") if line]


def loom_lines(made: Work) -> list[str]:
    """Draw the board with letters: a row of text for each peg number, far end first."""
    pegs = made.history.board.pegs.values()
    columns = sorted({round(p.x_mm, 1) for p in pegs})
    if len(columns) > 24 or len(pegs) > 400:
        return [f"a loom with {len(pegs)} pegs"]
    lines = []
    for y in sorted({round(p.y_mm, 1) for p in pegs}, reverse=True):
        at = {round(p.x_mm, 1): p.at for p in pegs if round(p.y_mm, 1) == y}
        lines.append("  " + "".join(f"{at.get(x, ''):<5}" for x in columns).rstrip())
    return [*lines, "  (you)"]


def supplies(needs: Supplies, shopping: ShoppingList | None) -> dict[str, Any]:
    """Return the supplies, and the packs to buy where a stash was given."""
    value: dict[str, Any] = {
        "pieces": needs.pieces,
        "bands": needs.bands,
        "mass_g": needs.mass_g,
        "heaps": [
            {
                "letter": heap.letter,
                "name": heap.name,
                "band": heap.band,
                **{job: getattr(heap, job) for job in _JOBS},
                "spares": heap.spares,
                "total": heap.total,
                "mass_g": heap.mass_g,
                "weighed": heap.weighed,
            }
            for heap in needs.heaps
        ],
        "clips": needs.clips + needs.spare_clips,
        "knots": needs.knots,
        "looms": needs.looms,
        "hooks": needs.hooks,
        "scissors": needs.scissors,
    }
    if shopping is not None:
        value["shopping"] = {
            "currency": shopping.currency,
            "cost": str(shopping.cost),
            "complete": shopping.complete,
            "lines": [
                {
                    "what": str(line.what),
                    "needed": line.needed,
                    "have": line.have,
                    "packs": [{"packs": n, "of": pack.size} for n, pack in line.packs],
                    "left_over": line.left_over,
                    "cost": None if line.cost is None else str(line.cost),
                }
                for line in shopping.lines
            ],
        }
    return value


def supply_rows(needs: Supplies) -> list[dict[str, str]]:
    """Return a row for each heap of bands, and the sum."""
    rows = [
        {
            "colour": f"{heap.letter} {heap.name}".strip(),
            "kind": heap.band or "not known",
            "bands": str(heap.total),
            "of which": _parts(heap),
            "weight": _grams(heap.mass_g, heap.weighed),
        }
        for heap in needs.heaps
    ]
    all_weighed = all(heap.weighed for heap in needs.heaps)
    total = {"colour": "in all", "kind": "", "bands": str(needs.bands), "of which": ""}
    return [*rows, {**total, "weight": _grams(needs.mass_g, all_weighed)}]


def _parts(heap: Heap) -> str:
    parts = [(job, getattr(heap, job)) for job in (*_JOBS, "spares")]
    return ", ".join(f"{count} {job}" for job, count in parts if count)


def _grams(mass_g: float | None, weighed: bool) -> str:
    if mass_g is None:
        return "not known"
    return f"{mass_g:.1f} g" if weighed else f"about {mass_g:.1f} g"


def tool_lines(needs: Supplies) -> list[str]:
    """Return the clips and tools."""
    counted = [
        ("clip", needs.clips + needs.spare_clips),
        ("piece of cord to tie off with", needs.knots),
        ("hook", needs.hooks),
        ("pair of scissors", needs.scissors),
    ]
    lines = [f"{n} {_several(what, n)}" for what, n in counted if n]
    for loom in needs.looms:
        size = f"{loom.rows} × {loom.pegs} pegs" if loom.kind != "pegs" else f"{loom.pegs} pegs"
        lines.append(f"{loom.count} {_several('loom', loom.count)}, {loom.kind}, {size}")
    return lines


def _several(what: str, count: int) -> str:
    if count == 1:
        return what
    first, _, rest = what.partition(" ")
    return f"{first}s {rest}".rstrip()


def shopping_rows(shopping: ShoppingList) -> list[dict[str, str]]:
    """Return a row for each thing to buy."""
    return [
        {
            "buy": str(line.what),
            "needed": str(line.needed),
            "have": str(line.have),
            "packs": " + ".join(f"{n} of {pack.size}" for n, pack in line.packs) or "—",
            "left over": str(line.left_over),
            "cost": "?" if line.cost is None else f"{line.cost}",
        }
        for line in shopping.lines
    ]


def cost_line(shopping: ShoppingList) -> str:
    """Return the cost, and whether it is all."""
    open_end = "" if shopping.complete else "; some prices are not known"
    return f"cost {shopping.cost} {shopping.currency}".rstrip() + open_end
