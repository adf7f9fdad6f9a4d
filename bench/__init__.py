"""Measurements, run on demand: `python -m bench NAME [--quick] [--json]`."""
