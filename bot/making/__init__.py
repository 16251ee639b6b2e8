"""What is made rather than written: pictures, sounds, calendar files, the coach's week."""
