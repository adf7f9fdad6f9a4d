"""The lesson: everything that will be said and shown, decided before anything is painted.

Every text is final: worded, counted, and free of anything harmful a user may have typed. Painters only lay
it out.
"""

from __future__ import annotations

from typing import Literal

import msgspec

from pegwright.lesson.say.phrasebook import Phrasebook, Units
from pegwright.lesson.scene.picture import Picture
from pegwright.lesson.scene.portrait import Portrait

PhaseName = Literal["prepare", "place", "turn", "work", "finish", "extend", "close", "wear"]
Hand = Literal["right", "left"]


class _Value(msgspec.Struct, frozen=True, kw_only=True):
    """Parts of a lesson are values."""


class Swatch(_Value, frozen=True, kw_only=True):
    """An entry of the key: letter, name, tint (#rrggbb) and the number of its pattern."""

    letter: str
    name: str
    tint: str
    hatch: int


class SupplyLine(_Value, frozen=True, kw_only=True):
    """A line of the supplies table: what, how many, what for, and its weight in words (may be empty)."""

    letter: str
    name: str
    count: int
    purpose: str
    weight: str = ""
    tint: str = ""
    hatch: int = 0


class SuppliesTable(_Value, frozen=True, kw_only=True):
    """The supplies in words: a line for each kind of band, their total, and the other things."""

    heading: str
    columns: tuple[str, ...]
    bands: tuple[SupplyLine, ...]
    total: str
    total_count: int
    things: tuple[str, ...]


class Checkpoint(_Value, frozen=True, kw_only=True):
    """A stop to look: what must be seen now, what to do if it is not so, and what a camera must see of it.

    `chart` shows every peg with its loops where a phase ends; `chart_heading` says so.
    """

    heading: str
    lines: tuple[str, ...]
    remedy: str
    view: str = ""
    chart_heading: str = ""
    chart: tuple[Picture, ...] = ()


class CommonMistake(_Value, frozen=True, kw_only=True):
    """What goes wrong at a step: the mistake, its outcome, its first sign, a spoken warning, the way back.

    The two pictures are shown side by side; `filming_note` says what to film. `kind` names the mistake,
    `heading` the step.
    """

    kind: str
    heading: str
    slip: str
    outcome: str
    sign: str
    warning: str
    filming_note: str
    way_back: tuple[str, ...] = ()
    wrong_picture: Picture | None = None
    right_picture: Picture | None = None


class Guess(_Value, frozen=True, kw_only=True):
    """Slips that fit all answers, with their steps, likeliest first; and the way back from here."""

    slips: tuple[str, ...]
    way_back: tuple[str, ...]


class Conclusion(_Value, frozen=True, kw_only=True):
    """Where the questions end: what is said there, and the slips still possible, likeliest first."""

    text: str
    guesses: tuple[Guess, ...] = ()


class Reply(_Value, frozen=True, kw_only=True):
    """An answer to choose, and what follows it."""

    text: str
    then: Fork | Conclusion


class Fork(_Value, frozen=True, kw_only=True):
    """A question and its answers."""

    question: str
    replies: tuple[Reply, ...]


class LessonStep(_Value, frozen=True, kw_only=True):
    """One action: its number, what to do, and its pictures.

    `ticks` is a row of short entries to tick off, where the step counts rounds; `ticks_in_words` says it
    without arrows and dashes; `rounds_spoken` is what a voice says of them, where colours or places differ
    in a way that no sentence above tells. `first` and `last` are the moves (from 1, in the order of the
    history) that it stands for; 0 where it stands for none. `rounds` says how often what it teaches is
    done. `learner_s` and `teacher_s` are the seconds that a learner and the teacher need for all of it;
    `is_timed` says that the teacher's were heard in a recording.
    `can_pause` says that the work can be put down after it, nothing being on the hook; `off_loom`, that the
    piece was lifted off the loom earlier. `legend` explains pictures and lists, and is never spoken; `view`
    says what a camera must see of the step. The last three come from a rehearsal: the `mistakes` made here,
    a `checkpoint` in or after the step, and the `troubleshooting`: what to ask a maker to whom something
    looks wrong now.
    """

    number: int
    instruction: str
    detail: tuple[str, ...] = ()
    legend: tuple[str, ...] = ()
    view: str = ""
    note: str = ""
    warning: str = ""
    pictures: tuple[Picture, ...] = ()
    closeup: Picture | None = None
    ticks: tuple[str, ...] = ()
    ticks_in_words: tuple[str, ...] = ()
    rounds_spoken: tuple[str, ...] = ()
    wide: bool = False
    first: int = 0
    last: int = 0
    rounds: int = 1
    learner_s: float = 0.0
    teacher_s: float = 0.0
    is_timed: bool = False
    can_pause: bool = True
    off_loom: bool = False
    mistakes: tuple[CommonMistake, ...] = ()
    checkpoint: Checkpoint | None = None
    troubleshooting: Fork | None = None


class Phase(_Value, frozen=True, kw_only=True):
    """Steps that belong together; `holding` shows how hands hold band or hook where that is first done."""

    name: PhaseName
    heading: str
    intro: str = ""
    holding: Picture | None = None
    steps: tuple[LessonStep, ...] = ()
    check: Checkpoint | None = None


class HoldStatement(_Value, frozen=True, kw_only=True):
    """What the proof says, in words."""

    heading: str
    held: bool
    lines: tuple[str, ...]


class Block(_Value, frozen=True, kw_only=True):
    """A heading with lines under it."""

    heading: str
    lines: tuple[str, ...]


class WristRow(_Value, frozen=True, kw_only=True):
    """The piece for one wrist, as a sentence and in numbers; `counts` are bands, colour by colour.

    `possible` are all wrists that it can be worn on. `made` is how it is worked unlike the lesson: the last
    peg, and how often each step that counts rounds is done, as far as the table has columns for them.
    `as_taught` says that it is made as shown in the lesson.
    """

    wrist: str
    sentence: str
    repeats: int
    extension: int
    counts: tuple[int, ...]
    bands: int
    possible: str = ""
    made: tuple[str, ...] = ()
    as_taught: bool = False

    def cells(self, table: SizeTable) -> tuple[str, ...]:
        """Return the row under the columns of its table."""
        made = [self.repeats] if table.repeats else []
        made += [self.extension] if table.extension else []
        sizes = (self.wrist, self.possible, *map(str, made), *self.made)
        return (*sizes, *map(str, (*self.counts, self.bands)))


class SizeTable(_Value, frozen=True, kw_only=True):
    """How the piece is made for each wrist; `now` says how it is made in this lesson.

    `repeats` and `extension` say whether these change from wrist to wrist and so have a column; it stands
    between the wrist and the bands of each colour. The last column counts all bands.
    """

    heading: str
    now: str
    columns: tuple[str, ...]
    rows: tuple[WristRow, ...]
    repeats: bool
    extension: bool

    @property
    def lines(self) -> tuple[str, ...]:
        """The table in sentences."""
        return (self.now, *(row.sentence for row in self.rows))


class FinishedSection(_Value, frozen=True, kw_only=True):
    """The piece as it comes off the loom: its portrait and what is said of it.

    `size` and `wrists` are sentences; the second is empty where no wrist was asked about. Without a portrait,
    `size` says why there is none. The portrait is printed `shown_mm` wide; `caption` compares that with the
    piece, and `text` describes it.
    """

    heading: str
    size: str
    wrists: str = ""
    portrait: Portrait | None = None
    shown_mm: float = 0.0
    caption: str = ""
    text: str = ""

    @property
    def sentences(self) -> tuple[str, ...]:
        """What is said of the piece, in sentences."""
        return tuple(text for text in (self.size, self.wrists) if text)


class Lesson(_Value, frozen=True, kw_only=True):
    """A piece taught from the first peg to the wrist.

    `page_label` and `step_label` name a page and a step, with `{page}`, `{pages}` and `{n}` for the numbers.
    `safety` is the short form of the cautions for the first page, `bands` says how large the bands are.
    `phrases` are the teacher's own words for ours. `mark` is the print mark: the same for the same pattern.
    """

    language: str
    hand: Hand
    title: str
    designer: str
    byline: str
    edition: str
    level: Block
    notes: str
    safety: Block
    bands: tuple[str, ...]
    supplies: SuppliesTable
    tools: Block
    key_heading: str
    key: tuple[Swatch, ...]
    hold: HoldStatement
    finished: FinishedSection
    phases: tuple[Phase, ...]
    cautions: Block
    colophon: tuple[str, ...]
    page_label: str
    step_label: str
    glossary: Block
    sizes: SizeTable | None = None
    mark: str = ""
    licence: str = ""
    units: Units = "metric"
    phrases: dict[str, str] = {}

    @property
    def phrasebook(self) -> Phrasebook:
        """The phrasebook of the lesson's language, with the teacher's own words and units."""
        return Phrasebook(self.language, self.phrases, self.units)

    @property
    def steps(self) -> tuple[LessonStep, ...]:
        """All numbered steps in order."""
        return tuple(step for phase in self.phases for step in phase.steps)
