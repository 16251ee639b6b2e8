"""The coach's side: clients and who needs attention, the card, pauses, travel, loads to decide, other coaches."""
