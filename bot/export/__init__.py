"""A practice's records as tables for a spreadsheet: a folder in the terminal, a ZIP in a coach's chat."""
