"""What time it is: the one clock, and the boot-time clock while bands are on."""
