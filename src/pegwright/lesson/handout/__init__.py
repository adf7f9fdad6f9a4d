"""The lesson on paper: what it is made of, and the plan that decides every page."""
