"""How fast it is, as ratios to simpler bots and to an empty store, measured in one run."""
