"""Measurements that are too long for the tests: `python -m tests.bench.<name>`."""
