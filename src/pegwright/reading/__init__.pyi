from .any_text import read_maker_text as read_maker_text
from .free import (
    loom_answered as loom_answered,
    read_free as read_free,
)
from .head import Colours as Colours
from .lexicon import (
    Lexicon as Lexicon,
    figures as figures,
)
from .phrase_reader import (
    PhraseReader as PhraseReader,
    spread_contractions as spread_contractions,
)
from .printed import (
    printed_language as printed_language,
    read_printed as read_printed,
)
from .split import free_language as free_language
from .text_reading import (
    Answers as Answers,
    Blank as Blank,
    SentenceReading as SentenceReading,
    TextReading as TextReading,
    count_new_moves as count_new_moves,
)

__all__ = [
    "Answers",
    "Blank",
    "Colours",
    "Lexicon",
    "PhraseReader",
    "SentenceReading",
    "TextReading",
    "count_new_moves",
    "figures",
    "free_language",
    "loom_answered",
    "printed_language",
    "read_free",
    "read_maker_text",
    "read_printed",
    "spread_contractions",
]
