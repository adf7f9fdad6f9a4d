"""What is asked on the page when something looks wrong: every question and every text written down once.

The same questions come up at many steps and for both hands. So a table holds the texts, another the questions
and what is found below them, each naming texts and other entries by number; a step names its first question.
"""

from __future__ import annotations

import msgspec

from pegwright.lesson import Conclusion, Fork

Entry = tuple[object, ...]


class QuestionTable:
    """Writes questions down, each one that is new. An entry comes after all that it names.

    A question is `[ask, [[reply, entry], …]]`; what is found is `[text, [[slips, back], …], 0]`, all of
    them numbers of texts but for the entry.
    """

    def __init__(self) -> None:
        self._texts: dict[str, int] = {}
        self._entries: dict[Entry, int] = {}

    @property
    def written(self) -> str:
        """Both tables as JSON."""
        tables = {"texts": list(self._texts), "entries": list(self._entries)}
        return msgspec.json.encode(tables).decode()

    def fork(self, fork: Fork | Conclusion) -> int:
        """Write a question down, or what is found, and return the number of its entry."""
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
