"""From tokens to the row of terms that the grammar reads."""
