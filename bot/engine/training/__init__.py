"""A client's sessions in numbers: what comes before one, the load model, corrections, clips, sounds."""
