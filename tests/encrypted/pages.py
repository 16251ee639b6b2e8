"""Pages of an encrypted file, decrypted one by one: what is still in unused corners of them."""

import subprocess
from pathlib import Path

PAGE = 4096  # bytes, as SQLCipher makes them
RESERVED = 80  # bytes at the end of each: 16 of a start value, 64 of a code over the page
SALT = 16  # bytes at the beginning of the file


def decrypted(file: Path, digits: str) -> bytes:
    """All pages (https://www.zetetic.net/sqlcipher/design/): AES-256 in CBC mode, each with its own start value."""
    content = file.read_bytes()
    pages = [content[at : at + PAGE] for at in range(0, len(content), PAGE)]
    return b"".join(_page(page[SALT if number == 0 else 0 :], digits) for number, page in enumerate(pages))


def _page(page: bytes, digits: str) -> bytes:
    body, start = page[:-RESERVED], page[-RESERVED : -RESERVED + 16]
    words = ["openssl", "enc", "-d", "-aes-256-cbc", "-nopad", "-K", digits, "-iv", start.hex()]
    return subprocess.run(words, input=body, capture_output=True, check=True).stdout
