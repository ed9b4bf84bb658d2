"""What a person asks of a plan, answered as plain data: volume, the overview of weeks. No formatting here."""
