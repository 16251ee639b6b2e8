"""Care for the one file: opening, key, lock, damage, a full disk, backups, who was erased, wiping."""
