"""Keep a long run of the same finding short."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable

from pegwright.finding.findings import Finding, finding

MAX_PER_CODE = 20


def sum_up(findings: Iterable[Finding], most: int = MAX_PER_CODE) -> tuple[Finding, ...]:
    """Keep the first `most` findings of each code, then one note a code that says how many more there are."""
    seen: Counter[str] = Counter()
    kept = []
    for one in findings:
        if one.code == "more-of-the-same":  # a run summed up before
            seen[str(one.facts["of"])] += int(str(one.facts["count"]))
            continue
        seen[one.code] += 1
        if seen[one.code] <= most:
            kept.append(one)
    shown = Counter(one.code for one in kept)
    more = ((code, n - shown[code]) for code, n in seen.items())
    kept += [finding("more-of-the-same", count=n, of=code) for code, n in more if n]
    return tuple(kept)
