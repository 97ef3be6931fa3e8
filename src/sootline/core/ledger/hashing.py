"""Which hash stands for an entry, and for what it says?

The hash of an entry is the leaf hash of RFC 9162 over its header's bytes, so that one tree can be
built over the record by anybody's program. The header holds the digest of the payload with its
salt: an erased payload leaves the chain whole, and a short one cannot be guessed from its digest.
"""

from hashlib import sha256

FORMAT = 1
ALGORITHM = "sha256"
SALT_BYTES = 16
# Before the first entry there is none.
BEGINNING = "0" * 64


def payload_digest(salt: bytes, payload: str) -> str:
    """Return the digest that a header names its payload by."""
    return sha256(salt + payload.encode()).hexdigest()


def entry_hash(header: str) -> str:
    """Return the hash of an entry: SHA-256 over a zero byte and its header."""
    return sha256(b"\x00" + header.encode()).hexdigest()
