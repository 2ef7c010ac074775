"""Numbers with units, sums of money and times, as they are written and spoken."""
