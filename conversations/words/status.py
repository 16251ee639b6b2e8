"""Short lines about a client, for the coach."""

NO_SESSION = "No session yet."
NO_SETS = "no sets"
LAST_SESSION = "Last session {day}: {sets}."
