"""What is no request: orders, habits, reports of what was used."""
