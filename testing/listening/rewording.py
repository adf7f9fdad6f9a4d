"""The lesson's English sentences in the words of somebody who speaks and does not read."""

from __future__ import annotations

import random
import re

_FORMS: tuple[tuple[str, tuple[str, ...]], ...] = (
    (
        r"Stretch one (?P<c>[a-z ]+) band from peg (?P<p>\w+) to peg (?P<q>\w+)(?P<w>.*)\.",
        (
            "Stretch one {c} band from peg {p} to peg {q}{w}.",
            "Take one {c} band and stretch it from peg {p} to peg {q}{w}.",
            "One {c} band goes from {p} over to {q}{w}.",
            "Put one {c} band on from peg {p} to {q}{w}.",
            "We put a {c} band from peg {p} to peg {q}, like that{w}.",
        ),
    ),
    (
        r"Do steps? (?P<s>[\w ,]+?) again(?P<w>.*?), (?P<n>once|\d+) more(?: times)?\.",
        (
            "Do steps {s} again{w}, {n} more times.",
            "Do that again{w}, {n} more times.",
            "Repeat steps {s}{w}, {n} more times.",
            "And the same again{w}, {n} more times in all.",
        ),
    ),
    (
        r"Push the hook down the open side of peg (?P<p>\w+), inside (?P<w>.*) above\.",
        (
            "Push the hook down the open side of peg {p}, inside {w} above.",
            "Go down the open side of {p} with your hook, inside {w} above it.",
            "Put the hook down inside peg {p}, under {w} above.",
        ),
    ),
    (
        r"Catch (?P<w>.*) and pull it up through those loops\.",
        (
            "Catch {w} and pull it up through those loops.",
            "Get hold of {w} and bring it up through those loops.",
            "Pick up {w}, pull it up through.",
        ),
    ),
    (
        r"On peg (?P<p>\w+), catch (?P<w>.*) with the hook\.",
        (
            "On peg {p}, catch {w} with the hook.",
            "On {p} you catch {w} with your hook.",
            "Go to peg {p} and pick up {w}.",
        ),
    ),
    (
        r"Lift it up over (?P<w>.*) above, and let it drop off the peg\.",
        (
            "Lift it up over {w} above, and let it drop off the peg.",
            "Lift it over {w} above and let it fall off the peg.",
            "It goes up over {w} above, and off the peg.",
        ),
    ),
    (
        r"Lay out (?P<w>.*), and count them\.",
        (
            "Lay out {w}, and count them.",
            "You need {w}, count them out.",
            "Please take {w}.",
        ),
    ),
    (
        r"Wind one (?P<c>[a-z ]+) band (?P<n>\d+) times round peg (?P<p>\w+)(?P<w>.*)\.",
        (
            "Wind one {c} band {n} times round peg {p}{w}.",
            "One {c} band goes {n} times round {p}{w}.",
            "Take a {c} band and wrap it {n} times round peg {p}{w}.",
        ),
    ),
    (
        r"Put it on peg (?P<p>\w+)(?P<w>.*)\.",
        ("Put it on peg {p}{w}.", "That goes on to peg {p}{w}.", "And over to {p}{w}."),
    ),
    (
        r"Hook one clip through all (?P<n>\d+) of them\.",
        ("Hook one clip through all {n} of them.", "The clip goes through all {n} of them."),
    ),
)
_SMALL = frozenset(["the", "a", "that", "it", "so", "then", "of", "you", "your"])


def reword(text: str, rng: random.Random) -> str:
    """Return a sentence as it might be said: letters in brackets left out, other words, a slip of grammar."""
    bare = re.sub(r" \(([^)]*)\)", lambda m: "" if len(m[1]) == 1 else _short_name(m[1], rng), text)
    bare = re.sub(r", [A-Z]\b(?=\))", "", bare)
    for form, ways in _FORMS:
        if found := re.fullmatch(form, bare):
            return rng.choice(ways).format(**found.groupdict()).replace(",,", ",")
    words = bare.split()
    kept = [word for word in words if word.lower() not in _SMALL or rng.random() > 0.08]
    return " ".join(kept) if len(kept) > 2 else bare


def _short_name(inside: str, rng: random.Random) -> str:
    """Say a loop's colour beside it, or not."""
    colour = inside.rpartition(",")[0]
    return rng.choice(("", f", the {colour} one,", f", {colour},")) if colour else ""
