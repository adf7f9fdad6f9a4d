"""Finished pieces of the Saturday workshop at the Harbour Street library, and three that do not hold."""
