"""What is opened in a browser: the follow-along page and the prompter, each one HTML file."""
