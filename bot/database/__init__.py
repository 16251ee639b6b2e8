"""Care for the one file: key, lock, damage, a full disk, backups, who was erased."""
