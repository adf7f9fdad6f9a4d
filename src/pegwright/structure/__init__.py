"""The made thing: what passes through what, and where each strand runs."""
