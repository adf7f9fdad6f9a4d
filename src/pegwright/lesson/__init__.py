"""What to show and what to say, page by page."""
