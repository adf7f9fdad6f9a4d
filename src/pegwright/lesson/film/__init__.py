"""The lesson as a film: script, captions, filming plan, motion and storyboard."""
