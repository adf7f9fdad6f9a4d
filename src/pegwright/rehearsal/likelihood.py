"""How likely each kind of slip is: classes a teacher can edit, sharpened by what happened in class.

A small document of its own; what is left out stays as it is by default:

    {"rehearsal": 1, "classes": {"often": 0.03}, "slips": {"loop-above": "often"}, "worth": 200,
     "seen": [{"slip": "loop-above", "made": 3, "makers": 12}]}

The numbers of a class are chances for one maker at one step where the slip can be made.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from typing import Annotated, Any, Literal, NamedTuple

import msgspec

from pegwright.finding import Finding, Location, finding
from pegwright.pattern import MAX_FINDINGS, decode_text, list_problems, not_json_finding
from pegwright.rehearsal.slips import SLIP_KINDS, Slip

__all__ = [
    "DEFAULT_WEIGHTS",
    "ClassTally",
    "SlipWeights",
    "SlipWeightsReading",
    "read_weights",
    "slip_chances",
    "weights_schema",
    "write_weights",
]

Chance = Annotated[float, msgspec.Meta(gt=0, lt=1)]
ShortText = Annotated[str, msgspec.Meta(min_length=1, max_length=40)]
TallyCount = Annotated[int, msgspec.Meta(ge=0, le=1_000_000)]

_CLASSES = {"often": 0.03, "sometimes": 0.01, "seldom": 0.003, "rarely": 0.001}
_SLIPS = {
    "loop-above": "often",
    "too-shallow": "often",
    "cap-wound-once": "often",
    "twist-forgotten": "often",
    "end-slips-off": "often",
    "outside": "sometimes",
    "wrong-peg": "sometimes",
    "step-skipped": "sometimes",
    "wrong-colour": "sometimes",
    "wrong-order": "sometimes",
    "one-of-several": "sometimes",
    "two-at-once": "sometimes",
    "loop-dropped": "sometimes",
    "cap-forgotten": "sometimes",
    "not-all-caught": "sometimes",
    "caught-too-many": "sometimes",
    "one-loop-caught": "sometimes",
    "loom-not-turned": "sometimes",
    "miscounted": "sometimes",
    "loop-below": "seldom",
    "wrong-start": "seldom",
    "mirrored-peg": "seldom",
    "neighbour-snagged": "seldom",
    "twisted-by-accident": "seldom",
    "wrong-end": "seldom",
    "loom-turned": "seldom",
    "steps-swapped": "seldom",
    "charm-not-slid": "seldom",
    "step-doubled": "rarely",
}


class _TableStruct(msgspec.Struct, frozen=True, kw_only=True, omit_defaults=True, forbid_unknown_fields=True):
    """Parts of the table refuse fields they do not know."""


class ClassTally(_TableStruct, frozen=True, kw_only=True):
    """What happened in class: so many makers worked the piece and made the slip so many times in all."""

    slip: ShortText
    made: TallyCount
    makers: Annotated[int, msgspec.Meta(ge=1, le=100_000)]


class SlipWeights(_TableStruct, frozen=True, kw_only=True):
    """The chance of each class, the class of each kind of slip, and what was seen.

    `worth` says how many chances to slip the class's number is worth against what was seen.
    """

    rehearsal: Literal[1] = 1
    classes: dict[ShortText, Chance] = {}
    slips: dict[ShortText, ShortText] = {}
    worth: Annotated[float, msgspec.Meta(gt=0, le=1_000_000)] = 200.0
    seen: Annotated[tuple[ClassTally, ...], msgspec.Meta(max_length=1000)] = ()

    def prior(self, kind: str) -> float:
        """Return the chance of a kind of slip at one step before anything was seen."""
        classes = _CLASSES | self.classes
        return classes[self.slips.get(kind, _SLIPS[kind])]


DEFAULT_WEIGHTS = SlipWeights()


class SlipWeightsReading(NamedTuple):
    """The weights, or None, and the findings."""

    weights: SlipWeights | None
    findings: tuple[Finding, ...]


def slip_chances(weights: SlipWeights, slips: Iterable[Slip]) -> dict[Slip, float]:
    """Return the chance that one maker makes each slip.

    The chance of a kind at a step is shared evenly among the forms it can take there. It is the mean of a
    Beta distribution worth `worth` chances, updated by what was seen (Beta-binomial): (worth · p + made) /
    (worth + makers · steps at which the slip can be made).
    """
    slips = tuple(slips)
    forms = Counter((slip.at, slip.kind) for slip in slips)
    steps = Counter(kind for _, kind in forms)
    made: Counter[str] = Counter()
    offered: Counter[str] = Counter()
    for seen in weights.seen:
        made[seen.slip] += seen.made
        offered[seen.slip] += seen.makers * steps[seen.slip]
    posterior = {
        kind: (weights.worth * weights.prior(kind) + made[kind])
        / (weights.worth + max(offered[kind], made[kind]))
        for kind in steps
    }
    return {slip: posterior[slip.kind] / forms[slip.at, slip.kind] for slip in slips}


def read_weights(data: bytes) -> SlipWeightsReading:
    """Read a table from UTF-8 JSON. Never raises on bad input."""
    text = decode_text(data)
    if isinstance(text, Finding):
        return SlipWeightsReading(None, (text,))
    try:
        raw = msgspec.json.decode(text)
        weights = msgspec.convert(raw, SlipWeights)
    except msgspec.ValidationError:
        found = list_problems(raw, SlipWeights, "")[:MAX_FINDINGS]
        unfit = (finding("not-a-slip-table", Location(path=path), reason=reason) for path, reason in found)
        return SlipWeightsReading(None, tuple(unfit))
    except (msgspec.DecodeError, RecursionError) as error:
        return SlipWeightsReading(None, (not_json_finding(text, error),))
    unknown = tuple(_unknown_names(weights))
    return SlipWeightsReading(None if unknown else weights, unknown)


def write_weights(weights: SlipWeights) -> bytes:
    """Return the one canonical text: UTF-8 JSON, two spaces, newline at the end."""
    raw = {"rehearsal": weights.rehearsal, **msgspec.to_builtins(weights)}
    return msgspec.json.format(msgspec.json.encode(raw), indent=2) + b"\n"


def weights_schema() -> dict[str, Any]:
    """Return the JSON Schema (draft 2020-12) of the table."""
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "Pegwright slips, version 1",
        **msgspec.json.schema(SlipWeights),
    }


def _unknown_names(weights: SlipWeights) -> Iterable[Finding]:
    kinds, classes = tuple(SLIP_KINDS), _CLASSES | weights.classes
    for kind, given in weights.slips.items():
        if kind not in SLIP_KINDS:
            yield finding("slip-unknown", Location(path="/slips"), slip=kind, known=kinds)
        if given not in classes:
            yield finding("slip-class-unknown", Location(path="/slips"), given=given, known=tuple(classes))
    for i, seen in enumerate(weights.seen):
        if seen.slip not in SLIP_KINDS:
            yield finding("slip-unknown", Location(path=f"/seen/{i}/slip"), slip=seen.slip, known=kinds)
