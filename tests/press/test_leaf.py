"""Kit sheet, filming plan and script, read back from their pages and compared with each other."""

from __future__ import annotations

import io
import re

import pytest
from pypdf import PdfReader

from pegwright.finding import RefusedError
from pegwright.fit import Stash, choose_packs, count_supplies, supplies_for_class
from pegwright.fit.stash import BandGoods, Goods, Pack
from pegwright.lesson import Leaf, Lesson, Table, filming_plan, kit_sheet, script_leaf, write_script
from pegwright.lesson.film.filming import clock_time
from pegwright.lesson.kit import making_times_s
from pegwright.press import Paper, leaf_pdf
from tests.lesson.pieces import buoys, dinghy, ebb, lesson, smack, work
from tests.press.test_svg import HOSTILE

PIECES = {"ebb": ebb(), "dinghy": dinghy(), "smack": smack(), "buoys": buoys()}
piece = pytest.mark.parametrize("name", PIECES)
STASH = Stash(
    currency="florin",
    bands=(BandGoods(have=40, packs=(Pack(size=300, price="2.40"), Pack(size=600, price="4.00"))),),
    clips=Goods(have=2, packs=(Pack(size=25, price="1.00"),)),
)


def read(leaf: Leaf, paper: Paper = "a4") -> str:
    reader = PdfReader(io.BytesIO(leaf_pdf(leaf, paper)))
    return bare("".join(page.extract_text() for page in reader.pages))


def bare(text: str) -> str:
    return re.sub(r"\s+", "", text.replace("\u00ad", ""))


def grid(leaf: Leaf, number: int) -> Table:
    return [part for part in leaf.parts if isinstance(part, Table)][number]


def _kit(name: str, learners: int) -> tuple[Lesson, Leaf]:
    made = lesson(PIECES[name])
    one = count_supplies(PIECES[name], work(PIECES[name]))
    shopping = choose_packs(supplies_for_class(one, learners), STASH)
    return made, kit_sheet(made, write_script(made), one, learners, shopping=shopping)


@piece
@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_everything_on_a_leaf_is_real_text(name: str, paper: Paper) -> None:
    """Headings, every cell in its row, every line, cautions: read back by pypdf."""
    made, sheet = _kit(name, 12)
    for leaf in (sheet, filming_plan(made, write_script(made)), script_leaf(made, write_script(made))):
        text = read(leaf, paper)
        assert bare(leaf.title) in text
        for part in leaf.parts:
            assert bare(part.heading) in text
            cells = [c for row in part.rows for c in row] if isinstance(part, Table) else part.lines
            missing = [
                c for c in cells if bare(c).replace("-", "") not in text.replace("-", "").replace("‐", "")
            ]
            assert missing == []


@piece
@pytest.mark.parametrize("learners", [1, 2, 12, 30])
def test_bags_spares_and_totals_add_up(name: str, learners: int) -> None:
    """Bags times learners and spares are the total, colour by colour; a bag is the lesson's own supplies."""
    made, sheet = _kit(name, learners)
    bag, whole = grid(sheet, 0), grid(sheet, 1)
    assert [int(row[2]) for row in bag.rows[:-1]] == [row.count for row in made.supplies.bands]
    assert int(bag.rows[-1][2]) == made.supplies.total_count == sum(int(row[2]) for row in bag.rows[:-1])
    for one, row in zip(bag.rows, whole.rows, strict=True):
        times, each = map(int, row[2].split(" × "))
        assert (times, each) == (learners, int(one[2]))
        assert times * each + int(row[3]) == int(row[4])
    assert sum(int(row[4]) for row in whole.rows[:-1]) == int(whole.rows[-1][4])


@piece
def test_the_shopping_agrees_with_the_class(name: str) -> None:
    """Needed counts are the class's; what is at hand and bought covers them; costs add up."""
    _, sheet = _kit(name, 12)
    whole, buy = grid(sheet, 1), grid(sheet, 2)
    bands = [row for row in buy.rows if row[0].split(" ")[0] in {r[0] for r in whole.rows[:-1]}]
    assert [row[1] for row in bands] == [row[4] for row in whole.rows[:-1]]
    for row in bands:
        bought = sum(int(a) * int(b) for a, b in re.findall(r"(\d+) × (\d+)", row[3]))
        assert int(row[2]) + bought >= int(row[1])
    costs = [float(row[4].split(" ")[0]) for row in buy.rows[:-1] if row[4][0].isdigit()]
    assert float(buy.rows[-1][4].split(" ")[0]) == pytest.approx(sum(costs))


@piece
def test_the_timetable_adds_up_to_showing_and_making(name: str) -> None:
    """Each part begins when the one before ends; the end is the film's length and all making."""
    made, sheet = _kit(name, 12)
    told = write_script(made)
    table = grid(sheet, 3)
    assert [row[1] for row in table.rows[:-1]] == [c.title for c in told.chapters]
    total = told.length_s + sum(making_times_s(made))
    assert table.rows[-1][0] == clock_time(total)
    assert sum(making_times_s(made)) == pytest.approx(sum(step.learner_s for step in made.steps))
    starts = [_seconds(row[0]) for row in table.rows]
    assert starts == sorted(starts)


def _seconds(text: str) -> int:
    minutes, seconds = map(int, text.split(":"))
    return 60 * minutes + seconds


@piece
def test_the_filming_plan_is_the_scripts(name: str) -> None:
    """One row a shot at its time; fast ones and pauses are marked; chapters are those of the captions."""
    made = lesson(PIECES[name])
    told = write_script(made)
    plan = filming_plan(made, told)
    shots, chapters = grid(plan, 0), grid(plan, 1)
    assert len(shots.rows) == len(told.shots)
    for row, shot in zip(shots.rows, told.shots, strict=True):
        assert row[1] == clock_time(shot.start_s)
        assert row[4] == shot.view
        assert ("times as fast" in row[5]) == (shot.speed > 1)
        assert ("pause here" in row[5]) == shot.pause
    assert [row[1] for row in chapters.rows] == [c.title for c in told.chapters]
    numbers = [int(row[3].split(" ")[1].rstrip(":")) for row in shots.rows if row[3].startswith("Step ")]
    assert numbers == [step.number for step in made.steps]
    done = [row[3].partition(": ")[2] for row in shots.rows if row[3].startswith("Step ")]
    assert done == [step.instruction for step in made.steps]


@piece
def test_cautions_are_on_every_leaf_that_is_worked_from(name: str) -> None:
    """The kit sheet and the filming plan carry all of them; the script says them."""
    made, sheet = _kit(name, 3)
    for leaf in (sheet, filming_plan(made, write_script(made)), script_leaf(made, write_script(made))):
        text = read(leaf)
        for line in made.cautions.lines:
            if leaf is sheet or leaf.title.startswith("Filming"):
                assert bare(line) in text
            assert all(bare(part) in text for part in re.split(r"(?<=[.])\s", line))


def test_hostile_words_are_printed_as_they_are() -> None:
    """Title, colour and currency stand there letter by letter."""
    pattern = ebb(title=HOSTILE, colour=HOSTILE[:50])
    made = lesson(pattern)
    one = count_supplies(pattern, work(pattern))
    stash = Stash(currency="#panic() $x$", bands=STASH.bands)
    text = read(
        kit_sheet(made, write_script(made), one, 2, shopping=choose_packs(supplies_for_class(one, 2), stash))
    )
    assert bare('#eval("1+1") <script>alert(1)</script> $x$ ]]> &') in text
    assert bare("#panic() $x$") in text


def test_a_class_of_nobody_is_refused() -> None:
    """From one learner on."""
    made = lesson(ebb())
    with pytest.raises(RefusedError, match="1 learner or more"):
        kit_sheet(made, write_script(made), count_supplies(ebb(), work(ebb())), 0)


def test_the_same_leaf_gives_the_same_bytes() -> None:
    """Nothing of the hour gets in."""
    _, sheet = _kit("ebb", 4)
    assert leaf_pdf(sheet) == leaf_pdf(sheet)
