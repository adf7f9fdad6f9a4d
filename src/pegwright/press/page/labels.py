"""The labels of the pages' buttons in the language of the lesson: each medium has its own."""

from __future__ import annotations

from typing import NamedTuple

from pegwright.lesson import Phrasebook


class PageLabels(NamedTuple):
    """Words of the follow-along page. The page's script fills in `{n}` and `{count}` in `progress`."""

    next: str
    back: str
    first: str
    goto: str
    left: str
    right: str
    large: str
    read: str
    stop: str
    keys: str
    what: str
    tools: str
    moving: str
    progress: str
    note: str
    warning: str
    tick: str
    way_back: str
    wrong_open: str
    wrong_again: str
    wrong_back: str
    wrong_lost: str


class PrompterLabels(NamedTuple):
    """Words of the prompter. The prompter's script fills in `{wpm}` in `pace`."""

    start: str
    stop: str
    again: str
    slower: str
    faster: str
    smaller: str
    larger: str
    mirror: str
    pause: str
    keys: str
    pace: str


def page_labels(phrasebook: Phrasebook) -> PageLabels:
    """Return the labels of the follow-along page."""
    say = phrasebook.say
    return PageLabels(
        next=say("page-next"),
        back=say("page-back"),
        first=say("page-first"),
        goto=say("page-goto"),
        left=say("page-left"),
        right=say("page-right"),
        large=say("page-large"),
        read=say("page-read"),
        stop=say("page-stop"),
        keys=say("page-keys"),
        what=say("page-what"),
        tools=say("page-tools"),
        moving=say("page-moving"),
        progress=say("page-progress", n="{n}", count="{count}"),
        note=say("label-note"),
        warning=say("label-warning"),
        tick=say("label-tick"),
        way_back=say("label-back"),
        wrong_open=say("wrong-open"),
        wrong_again=say("wrong-again"),
        wrong_back=say("wrong-back"),
        wrong_lost=say("wrong-lost"),
    )


def prompter_labels(phrasebook: Phrasebook) -> PrompterLabels:
    """Return the labels of the prompter."""
    say = phrasebook.say
    return PrompterLabels(
        start=say("prompter-start"),
        stop=say("prompter-stop"),
        again=say("prompter-again"),
        slower=say("prompter-slower"),
        faster=say("prompter-faster"),
        smaller=say("prompter-smaller"),
        larger=say("prompter-larger"),
        mirror=say("prompter-mirror"),
        pause=say("prompter-pause"),
        keys=say("prompter-keys"),
        pace=say("prompter-pace", wpm="{wpm}"),
    )
