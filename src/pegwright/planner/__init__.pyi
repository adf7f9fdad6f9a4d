from .description import (
    Description as Description,
    SpokenMove as SpokenMove,
    describe as describe,
)
from .draft import (
    PlanDraft as PlanDraft,
    read_draft as read_draft,
    without_working as without_working,
)
from .given_working import measure_given_working as measure_given_working
from .measures import Measures as Measures
from .mend_search import Mend as Mend
from .mends import (
    Mends as Mends,
    find_mends as find_mends,
)
from .proposals import (
    CountFailures as CountFailures,
    Proposals as Proposals,
    ReportTries as ReportTries,
    propose as propose,
)
from .simpler import (
    Effort as Effort,
    Simpler as Simpler,
    find_simpler as find_simpler,
    measure_effort as measure_effort,
)
from .written_proposal import Proposal as Proposal

__all__ = [
    "CountFailures",
    "Description",
    "Effort",
    "Measures",
    "Mend",
    "Mends",
    "PlanDraft",
    "Proposal",
    "Proposals",
    "ReportTries",
    "Simpler",
    "SpokenMove",
    "describe",
    "find_mends",
    "find_simpler",
    "measure_effort",
    "measure_given_working",
    "propose",
    "read_draft",
    "without_working",
]
