from .catalogue import (
    CATALOGUE as CATALOGUE,
)
from .findings import (
    Fact as Fact,
    Finding as Finding,
    Fix as Fix,
    Language as Language,
    Location as Location,
    Phrase as Phrase,
    RefusedError as RefusedError,
    Severity as Severity,
    finding as finding,
    phrase as phrase,
    worst_severity as worst_severity,
)
from .phrases import (
    PHRASES as PHRASES,
)
from .summary import (
    MAX_PER_CODE as MAX_PER_CODE,
    sum_up as sum_up,
)
from .wording import (
    LANGUAGES as LANGUAGES,
    WordedFinding as WordedFinding,
    word_finding as word_finding,
    word_location as word_location,
    word_phrase as word_phrase,
)

__all__ = [
    "CATALOGUE",
    "LANGUAGES",
    "MAX_PER_CODE",
    "PHRASES",
    "Fact",
    "Finding",
    "Fix",
    "Language",
    "Location",
    "Phrase",
    "RefusedError",
    "Severity",
    "WordedFinding",
    "finding",
    "phrase",
    "sum_up",
    "word_finding",
    "word_location",
    "word_phrase",
    "worst_severity",
]
