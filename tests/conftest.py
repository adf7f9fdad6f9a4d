"""Settings shared by all tests."""

from __future__ import annotations

from hypothesis import HealthCheck, settings

# Machines differ and are shared: no test may depend on how long an example takes.
settings.register_profile("pegwright", deadline=None, suppress_health_check=[HealthCheck.too_slow])
settings.load_profile("pegwright")
