"""What a client says about themselves: consent, health questions, details, settings, leaving."""
