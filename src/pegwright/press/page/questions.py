"""The questions a page asks when something looks wrong, with every question and every text stored once.

The same questions come up at many steps and for both hands. So one table holds the texts and another the
questions and conclusions, which refer to texts and to each other by number. A step refers to its first
question.
"""

from __future__ import annotations

import msgspec

from pegwright.lesson import Conclusion, Fork

Entry = tuple[object, ...]


class QuestionTable:
    """Collects questions, each one once. An entry comes after every entry that it refers to.

    A question is `[ask, [[reply, entry], …]]`, a conclusion `[text, [[slips, back], …], 0]`. All are numbers
    of texts, except `entry`, which is the number of an entry.
    """

    def __init__(self) -> None:
        self._texts: dict[str, int] = {}
        self._entries: dict[Entry, int] = {}

    @property
    def written(self) -> str:
        """Return both tables as JSON."""
        tables = {"texts": list(self._texts), "entries": list(self._entries)}
        return msgspec.json.encode(tables).decode()

    def fork(self, fork: Fork | Conclusion) -> int:
        """Add a question or a conclusion and return the number of its entry."""
        if isinstance(fork, Conclusion):
            guesses = tuple(
                (tuple(map(self._text, guess.slips)), tuple(map(self._text, guess.way_back)))
                for guess in fork.guesses
            )
            return self._entry((self._text(fork.text), guesses, 0))
        replies = tuple((self._text(reply.text), self.fork(reply.then)) for reply in fork.replies)
        return self._entry((self._text(fork.question), replies))

    def _text(self, text: str) -> int:
        return self._texts.setdefault(text, len(self._texts))

    def _entry(self, entry: Entry) -> int:
        return self._entries.setdefault(entry, len(self._entries))
