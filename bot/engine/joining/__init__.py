"""Who may come in and train: codes, consent, health answers, clearance."""
