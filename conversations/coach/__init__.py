"""What a coach decides and enters about a client: clearance, hold, pause, measures, words."""
