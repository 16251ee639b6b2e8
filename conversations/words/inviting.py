"""Inviting a client."""

NAME = "The client's first name?"
