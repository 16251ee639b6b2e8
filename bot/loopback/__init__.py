"""A Bot API on this machine: without a transport (`api`), over HTTP (`http`), without a socket (`inprocess`).

`phone` is a person's side of the chat, `page` what a browser shows of it. Only private chats, only what
cuffline uses, but that as strictly as the real one.
"""
