"""A practice's records as tables for a spreadsheet: a folder in the terminal, a ZIP in a coach's chat."""

# How a ZIP begins; what is made for a chat is one, or says in one of these words why there is none.
A_ZIP = b"PK"
TOO_LARGE, NOBODY = b"too_large", b"nobody"
