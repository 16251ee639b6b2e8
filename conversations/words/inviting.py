"""Inviting a client."""

NAME = "The client's first name?"
AGAIN = "Just the first name, please, in letters. Like this: Ruta."
