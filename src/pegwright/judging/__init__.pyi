from .falling import (
    FALL_CODES as FALL_CODES,
    find_falling as find_falling,
)
from .mending import keep_safe_fixes as keep_safe_fixes
from .single_failures import (
    MOST_BANDS_SNAPPED as MOST_BANDS_SNAPPED,
    SingleFailures as SingleFailures,
    WorstSnap as WorstSnap,
    find_single_failures as find_single_failures,
    find_worst_snap as find_worst_snap,
)

__all__ = [
    "FALL_CODES",
    "MOST_BANDS_SNAPPED",
    "SingleFailures",
    "WorstSnap",
    "find_falling",
    "find_single_failures",
    "find_worst_snap",
    "keep_safe_fixes",
]
