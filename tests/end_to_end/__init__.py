"""The real program as a process of its own, over HTTP on this machine."""
