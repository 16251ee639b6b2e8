"""The way to the server and back: updates in, letters out."""
