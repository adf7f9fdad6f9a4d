"""Length, wrist, strain, supplies, kits, cost and times."""
