"""Strings nobody should have to answer, for every question of every dialogue."""
