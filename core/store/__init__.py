"""The only place with SQL: one SQLite file, one writer connection, facts that are only ever added.

`connection` opens the file and owns transactions, `migrations` the schema, and each other module the
questions and changes of one kind of row. Functions take the open `Store` first and never commit.
"""
