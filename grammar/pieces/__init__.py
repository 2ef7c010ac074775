"""From phrases to what was said of which piece."""
