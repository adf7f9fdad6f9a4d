"""What happens when the maker goes wrong: every likely slip rehearsed before it is made."""

from pegwright.rehearsal.checks import Checks, choose_checks
from pegwright.rehearsal.consequence import Outcome, Sign
from pegwright.rehearsal.likelihood import DEFAULT, Seen, Weights, read_weights, weights_schema, write_weights
from pegwright.rehearsal.ranking import Comparison, Risk, Spot
from pegwright.rehearsal.rehearse import Pairs, Rehearsal, compare, rehearse, rehearse_pairs
from pegwright.rehearsal.slips import KINDS, Slip, find_slips

__all__ = [
    "DEFAULT",
    "KINDS",
    "Checks",
    "Comparison",
    "Outcome",
    "Pairs",
    "Rehearsal",
    "Risk",
    "Seen",
    "Sign",
    "Slip",
    "Spot",
    "Weights",
    "choose_checks",
    "compare",
    "find_slips",
    "read_weights",
    "rehearse",
    "rehearse_pairs",
    "weights_schema",
    "write_weights",
]
