"""Is every band held? Certificates, and a small checker that trusts nothing."""

from pegwright.proof.check import check
from pegwright.proof.losses import Loss, needed_loops, passengers, snaps
from pegwright.proof.prove import prove
from pegwright.proof.values import Free, Held, HeldByPart, NotProved, Part, Proof, Slide, Slip, Step, Verdict

__all__ = [
    "Free",
    "Held",
    "HeldByPart",
    "Loss",
    "NotProved",
    "Part",
    "Proof",
    "Slide",
    "Slip",
    "Step",
    "Verdict",
    "check",
    "needed_loops",
    "passengers",
    "prove",
    "snaps",
]
