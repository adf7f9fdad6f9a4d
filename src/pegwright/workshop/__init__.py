"""Runs the line, opens and saves project folders."""
