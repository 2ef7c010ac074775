"""From letters to tokens: what is written, whatever it means."""
