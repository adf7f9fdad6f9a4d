"""What happens when the maker goes wrong: every likely slip rehearsed before it is made."""

from pegwright.rehearsal.checks import Checks, choose_checks
from pegwright.rehearsal.consequence import Outcome, Sign
from pegwright.rehearsal.diagnosis import Answer, Candidate, Diagnosis, Question, Surgery
from pegwright.rehearsal.likelihood import DEFAULT, Seen, Weights, read_weights, weights_schema, write_weights
from pegwright.rehearsal.ranking import Comparison, Risk, Spot, Trouble, Way
from pegwright.rehearsal.rehearse import Pairs, Rehearsal, compare, rehearse, rehearse_pairs
from pegwright.rehearsal.slips import KINDS, Slip, find_slips
from pegwright.rehearsal.way_back import Act, WayBack, way_back

__all__ = [
    "DEFAULT",
    "KINDS",
    "Act",
    "Answer",
    "Candidate",
    "Checks",
    "Comparison",
    "Diagnosis",
    "Outcome",
    "Pairs",
    "Question",
    "Rehearsal",
    "Risk",
    "Seen",
    "Sign",
    "Slip",
    "Spot",
    "Surgery",
    "Trouble",
    "Way",
    "WayBack",
    "Weights",
    "choose_checks",
    "compare",
    "find_slips",
    "read_weights",
    "rehearse",
    "rehearse_pairs",
    "way_back",
    "weights_schema",
    "write_weights",
]
