"""When something is wrong: stop words, bands that must come off, alerts, and what is asked afterwards."""
