"""A Bot API on this machine, and the phones that talk to it: for trying cuffline out and for its tests."""
