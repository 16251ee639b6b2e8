"""What clients may say that matters, and the small words around it that change its sense.

Phrases stand one a line or with ";" between. In a phrase `{name}` is any word of that group, `..` is up to
four words, `a|b` is either word; a `=` in front: the phrase must be the whole clause, small words apart. All
in lower case, without apostrophes.
"""
