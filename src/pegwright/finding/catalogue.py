"""Every finding and every phrase, by name, with the facts that their wordings are made of.

The words are in `languages/*.ftl`, an entry of the same name in each; `docs/findings.md` explains each code.
Tests fail where one is missing, or where wordings and facts disagree.
"""

from __future__ import annotations

from typing import Literal, NamedTuple


class Entry(NamedTuple):
    """How a finding is graded, and the facts it must come with."""

    severity: Literal["error", "warning", "note"]
    facts: frozenset[str]


def _error(facts: str = "") -> Entry:
    return Entry("error", frozenset(facts.split()))


def _warning(facts: str = "") -> Entry:
    return Entry("warning", frozenset(facts.split()))


def _note(facts: str = "") -> Entry:
    return Entry("note", frozenset(facts.split()))


CATALOGUE: dict[str, Entry] = {
    # --- reading the document
    "file-unreadable": _error("file reason"),
    "not-text": _error(),
    "too-large": _error("size limit"),
    "not-json": _error("reason"),
    "not-a-pattern": _error("reason hint"),
    "unknown-version": _error("version newest"),
    # --- motifs and repeats
    "motif-twice": _error("name"),
    "motif-unknown": _error("name known count"),
    "motif-in-itself": _error("name"),
    "slot-empty": _error("name slot"),
    "slot-unknown": _error("name slot"),
    "count-unknown": _error("name"),
    "nested-too-deeply": _error("limit"),
    "too-many-moves": _error("limit"),
    "too-many-passes": _error(),
    "too-many-refused": _error("count left"),
    "stack-full": _error("peg limit move"),
    "too-many-pegs": _error("pegs limit"),
    "off-the-rows": _error("reason"),
    # --- moves that cannot be made
    "peg-unknown": _error("peg pegs more move"),
    "peg-double": _error("peg"),
    "peg-twice": _error("peg move"),
    "peg-bare": _error("peg move"),
    "peg-inside-band": _error("peg move"),
    "peg-enclosed": _error("peg move"),
    "turns-mismatch": _error("given pegs move"),
    "twists-mismatch": _error("given pegs move"),
    "loop-missing": _error("loop loops peg move"),
    "not-so-many-above": _error("through above peg move"),
    "same-peg": _error("peg move"),
    "nothing-to-lift-over": _error("peg move"),
    "hook-empty": _error("move"),
    "end-unknown": _error("end move"),
    "end-taken": _error("end move"),
    # --- what a craft editor would say
    "loop-dragged": _warning("band colour peg others count"),
    "band-not-worked": _warning("band colour"),
    "loop-left": _warning("count peg loops"),
    "start-not-held": _warning("band colour peg"),
    "stack-too-high": _warning("loops peg stack_mm room_mm"),
    "no-finish": _warning(),
    "catches-one": _warning("kind loops peg"),
    "catches-more": _warning("kind wanted loops peg"),
    "laid-after-clip": _warning("clip more"),
    "letter-twice": _error("letter"),
    "colour-not-listed": _warning("letter"),
    "colour-unused": _note("letter name"),
    "band-kind-twice": _error("name"),
    "band-kind-unknown": _error("letter band known count"),
    # --- what a technical editor would say of the lesson
    "contact-missing": _note(),
    "licence-missing": _note(),
    "about-missing": _note(),
    "level-low": _note("level reckoned reasons"),
    "motif-unused": _note("name"),
    "repeat-of-none": _warning(),
    "side-named": _note("word"),
    "term-mixed": _note("word term"),
    "text-peg-unknown": _warning("peg"),
    "text-peg-moves": _note("peg"),
    "text-step-unknown": _warning("number steps"),
    "text-hard": _note("words"),
    "colours-alike": _note("one other who"),
    "lesson-disagrees": _error("what said counted"),
    # --- is it held?
    "band-falls": _error("band colour reason"),
    "band-not-proved": _warning("band colour reason"),
    "losses-left-out": _note("bands limit"),
    # --- size and counts
    "band-slack": _warning("name pegs taut_mm rest_mm more"),
    "band-taut": _warning("name pegs stretch more"),
    "band-overstretched": _error("name pegs stretch more"),
    "stated-count-wrong": _warning("what stated counted"),
    "text-count-wrong": _warning("quote counted"),
    # --- wrists
    "wrist-unreadable": _error("said sizes"),
    "wrist-nonsense": _error("what"),
    "wrist-unusual": _warning("said low_cm high_cm"),
    "wrist-too-young": _error("years"),
    # --- on the loom
    "band-near-breaking": _warning("name pegs stretch force_n breaks more"),
    # --- how the piece fits
    "fit-loose": _warning("length_mm wrist_mm low_mm high_mm"),
    "fit-tight": _warning("length_mm wrist_mm low_mm high_mm pulls"),
    "fit-hand": _warning("hand_mm pull_n"),
    "fit-unmeasured": _note("known_mm needed_mm"),
    "extension-nowhere": _warning("bands"),
    "stretch-curve-nonsense": _error("reason"),
    "gauge-nonsense": _error("what value_mm"),
    # --- calibration
    "measure-nonsense": _error("what value unit reason cure"),
    "measure-few": _note("count what needed"),
    "density-odd": _warning("density_g_cm3 low high"),
    "modulus-odd": _warning("shear_mpa low high"),
    "moduli-tangled": _note("low high"),
    "stretch-misfit": _warning("mass_g length_mm fitted_mm reading_mm"),
    # --- the stash
    "not-a-stash": _error("reason"),
    "stash-lacks": _note("what"),
    "currency-missing": _note(),
    # --- the table of slips
    "not-a-slip-table": _error("reason"),
    "slip-unknown": _error("slip known"),
    "slip-class-unknown": _error("given known"),
    # --- many of the same
    "more-of-the-same": _note("count of"),
    # --- the shape at rest
    "bands-drawn-crossing": _error("gap_mm"),
    "rest-not-reached": _warning("iterations drop"),
    "rest-interrupted": _note("iterations"),
}


def _phrases(**facts: str) -> dict[str, frozenset[str]]:
    return {name.replace("_", "-"): frozenset(each.split()) for name, each in facts.items()}


PHRASES: dict[str, frozenset[str]] = {
    # --- what every wording draws on
    **_phrases(
        list_and="head last initial",
        list_or="head last initial",
        holder="kind name",
        place_line="line column",
        place_step="step",
        place_peg="kind name",
        place_band="band",
        place_whole="",
        place_at="place",
        hint_is="hint",
        fix_is="label",
        as_told="text",
        band_named="band colour",
        the_band="band colour",
        so_many_more="count",
    ),
    # --- reading
    **_phrases(
        os_reason="errno text",
        json_reason="kind signs text",
        pattern_braces="",
        nested_deeply="",
        given_twice="field",
        take_one_out="",
        no_such_field="field known",
        field_missing="field",
        see_schema="",
        is_not="said types",
        a_text="",
        true_or_false="",
        a_whole_number="",
        a_number="",
        an_object="",
        a_list="",
        great_number="",
        quote_it="",
        write_true="",
        write_digits="",
        write_braces="",
        write_brackets="",
        write_tag="tag choice",
        is_no_address="said",
        write_address="",
        is_no_end="said",
        write_end="",
        is_no_holder="said",
        write_holder="",
        is_no_letter="said",
        write_letter="",
        is_no_mirror="said",
        write_mirror="",
        is_no_tint="said",
        write_tint="",
        shows_nothing="said",
        write_visible="",
        write_visible_or_none="",
        out_of_bounds="said",
        take_at_least="least most",
        take_more_than="least most",
        too_many="size what",
        at_most="most",
        too_few="size what",
        at_least="least",
        no_choice="said",
        no_choice_for="said field",
        choices="choices",
        choices_near="near choices",
        one_of="choices",
        rubber_never_pulls="",
        rubber_pushes="",
        moved_before_row="peg",
        moved_before_peg="peg",
        moved_past_rows="peg",
        row_span="first last",
    ),
    # --- the loom and the proof
    **_phrases(
        open_twist="",
        open_across="",
        open_tangled="",
        falls_unfastened="",
        falls_passed_by_none="",
        falls_with="bands count more",
        falls_off="bands count more",
    ),
    # --- the lesson
    **_phrases(
        level_caps="",
        level_wide="",
        level_twists="",
        level_hung="",
        level_tall="",
        sight_everybody="",
        sight_protan="",
        sight_deutan="",
        sight_tritan="",
        what_bands="",
        what_bands_of="letter",
        what_key="",
        what_number="",
        what_first="step",
        what_moves="",
        what_rounds="step",
        what_boxes="step",
        what_strong="step",
        what_size="",
        what_size_bands="wrist",
    ),
    # --- size, counts and measures
    **_phrases(
        stated_bands="letter name",
        stated_bands_unlisted="letter",
        stated_clips="",
        wrist_of_age="years",
        wrist_of_girth="said",
        pulls_with="force_n",
        pulls_unknown="",
        curve_few="",
        curve_negative="",
        curve_falls="less_n less_mm more_n more_mm",
        gauge_repeat="",
        gauge_extension="",
        few_for_rubber="",
        few_for_both="",
        goods_bands="name letter band",
        goods_unlisted="letter",
        goods_loom="kind rows pegs",
        goods="kind",
        measured="what",
        measured_under="mass_g",
        between="low high",
        above_nought="",
        no_hole="flat_mm",
        thin_wire="",
        error_useless="",
        flat_already="flat_mm",
        all_snapped="times",
        longer_before="mass_g length_mm",
        cure="how",
    ),
    # --- what the studio does not do
    **_phrases(
        no_pattern="",
        file_no_pattern="",
        file_no_stash="",
        no_name_free="",
        no_such_piece="",
        no_such_work="",
        too_much_under_way="",
        changed_elsewhere="",
        overtaken="",
        folder_read_only="reason",
        wrong_inside="",
    ),
    # --- fixes
    **_phrases(
        fix_cap="peg",
        fix_upper_first="peg",
        fix_catch_all="",
        fix_clip="at",
        fix_list_colour="letter",
        fix_call_it="letter",
        fix_call_second="letter",
        fix_take_off="letter",
        fix_take_second="",
        fix_use_kind="name",
        fix_write="number",
        fix_tint="letter tint",
    ),
}
