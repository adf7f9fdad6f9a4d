from .checker import check as check
from .holding_paths import (
    bands_on_paths as bands_on_paths,
    find_holding_paths as find_holding_paths,
)
from .least_finder import LeastFinder as LeastFinder
from .loose import (
    FirstLoose as FirstLoose,
    find_first_loose as find_first_loose,
)
from .prover import (
    decide as decide,
    prove as prove,
)
from .reader import Reader as Reader
from .single_failures import (
    Loss as Loss,
    missed_loop_losses as missed_loop_losses,
    passengers as passengers,
    snap_losses as snap_losses,
)
from .values import (
    Cancellation as Cancellation,
    Free as Free,
    Held as Held,
    HeldInLeast as HeldInLeast,
    LeastWords as LeastWords,
    NotProved as NotProved,
    PathStep as PathStep,
    Proof as Proof,
    Verdict as Verdict,
)
from .word_reduction import (
    Numbering as Numbering,
    ReducedWords as ReducedWords,
    bands_in_use as bands_in_use,
    bands_that_may_cling as bands_that_may_cling,
    first_passing_events as first_passing_events,
    reduce_words as reduce_words,
)

__all__ = [
    "Cancellation",
    "FirstLoose",
    "Free",
    "Held",
    "HeldInLeast",
    "LeastFinder",
    "LeastWords",
    "Loss",
    "NotProved",
    "Numbering",
    "PathStep",
    "Proof",
    "Reader",
    "ReducedWords",
    "Verdict",
    "bands_in_use",
    "bands_on_paths",
    "bands_that_may_cling",
    "check",
    "decide",
    "find_first_loose",
    "find_holding_paths",
    "first_passing_events",
    "missed_loop_losses",
    "passengers",
    "prove",
    "reduce_words",
    "snap_losses",
]
