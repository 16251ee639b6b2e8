"""The calendar: recurring local times in IANA zones, what was moved or missed, quiet hours and limits."""
