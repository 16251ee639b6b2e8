"""The calendar of clients and coaches: reminders, changes of days, clocks that were set."""
