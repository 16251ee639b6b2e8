"""What sessions come to: trends, the coach's week, the client's recap, reports, girths."""
