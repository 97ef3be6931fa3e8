"""Published vectors: RFC 8785 canonical JSON, and the hash tree of RFC 6962 / RFC 9162.

Sources: RFC 8785 sections 3.2.2 and 3.2.3 (strings and sorting; its numbers with fractions are
outside the subset used here). For the tree, the leaves and roots of the reference implementation
of RFC 6962 ("certificate transparency", merkle tree tests), as many implementations repeat them;
its tree is that of RFC 9162 section 2.1.
"""

import json

import pytest

from sootline.core.basis import BadInputError
from sootline.core.ledger import Frontier, Tree, canonical, read_canonical
from sootline.core.ledger.merkle import is_beginning, node, root_by_inclusion

SORTED = (
    (
        r"""{"\u20ac": "Euro Sign", "\r": "Carriage Return",
        "\ufb33": "Hebrew Letter Dalet With Dagesh", "1": "One",
        "\ud83d\ude00": "Emoji: Grinning Face", "\u0080": "Control",
        "\u00f6": "Latin Small Letter O With Diaeresis"}""",
        '{"\\r":"Carriage Return","1":"One","\u0080":"Control",'
        '"\u00f6":"Latin Small Letter O With Diaeresis","\u20ac":"Euro Sign",'
        '"\U0001f600":"Emoji: Grinning Face","\ufb33":"Hebrew Letter Dalet With Dagesh"}',
    ),
    (
        r"""{"string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
        "literals": [null, true, false]}""",
        '{"literals":[null,true,false],"string":"\u20ac$\\u000f\\nA\'B\\"\\\\\\\\\\"/"}',
    ),
)
LEAVES = ("", "00", "10", "2021", "3031", "40414243", "5051525354555657",
          "606162636465666768696a6b6c6d6e6f")  # fmt: skip
ROOTS = (
    "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855",
    "6e340b9cffb37a989ca544e6bb780a2c78901d3fb33738768511a30617afa01d",
    "fac54203e7cc696cf0dfcb42c92a1d9dbaf70ad9e621f4bd8d98662f00e3c125",
    "aeb6bcfe274b70a14fb067a5e5578264db0fa9b51af5e0ba159158f329e06e77",
    "d37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7",
    "4e3bbb1f7b478dcfe71fb631631519a3bca12c9aefca1612bfce4c13a86264d4",
    "76e67dadbcdf1e10e1b74ddc608abd2f98dfb16fbce75277b5232a127f2087ef",
    "ddb89be403809e325750d3d263cd78929c2942b7942a34b77e122c9594a74c8c",
    "5dc9da79a70659a9ad559cb701ded9a2ab9d823aad2f4960cfe370eff4604328",
)
# (place from 0, size): the path of hashes, from the same tests.
INCLUSION = {
    (0, 8): (
        "96a296d224f285c67bee93c30f8a309157f0daa35dc5b87e410b78630a09cfc7",
        "5f083f0a1a33ca076a95279832580db3e0ef4584bdff1f54c8a360f50de3031e",
        "6b47aaf29ee3c2af9af889bc1fb9254dabd31177f16232dd6aab035ca39bf6e4",
    ),
    (5, 8): (
        "bc1a0643b12e4d2d7c77918f44e0f4f79a838b6cf9ec5b5c283e1f4d88599e6b",
        "ca854ea128ed050b41b35ffc1b87b8eb2bde461e9e3b5596ece6b9d5975a0ae0",
        "d37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7",
    ),
}
# (size before, size after).
CONSISTENCY = {
    (1, 8): INCLUSION[0, 8],
    (6, 8): (
        "0ebc5d3437fbe2db158b9f126a1d118e308181031d0a949f8dededebc558ef6a",
        "ca854ea128ed050b41b35ffc1b87b8eb2bde461e9e3b5596ece6b9d5975a0ae0",
        "d37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7",
    ),
    (2, 5): (
        "5f083f0a1a33ca076a95279832580db3e0ef4584bdff1f54c8a360f50de3031e",
        "bc1a0643b12e4d2d7c77918f44e0f4f79a838b6cf9ec5b5c283e1f4d88599e6b",
    ),
}


def leaf_hashes(count: int) -> list[bytes]:
    """Return the leaf hashes of the first leaves: a zero byte before each."""
    from hashlib import sha256  # noqa: PLC0415  # not by the code under test

    return [sha256(b"\x00" + bytes.fromhex(leaf)).digest() for leaf in LEAVES[:count]]


@pytest.mark.parametrize(("text", "expected"), SORTED)
def test_names_are_sorted_and_strings_written_as_published(text: str, expected: str) -> None:
    """Names go by their UTF-16 units, so that a smiling face comes before a Hebrew letter."""
    assert canonical(json.loads(text)) == expected
    assert read_canonical(expected) == json.loads(text)


@pytest.mark.parametrize("number", ["333333333.33333329", "4.50", "2e-3", "1E30"])
def test_the_published_numbers_with_fractions_are_refused(number: str) -> None:
    """The subset has no fractions; a decimal is written as text."""
    with pytest.raises(BadInputError):
        canonical({"numbers": [json.loads(number)]})


@pytest.mark.parametrize("count", range(9))
def test_roots_are_those_published(count: int) -> None:
    """A root of our tree is the root anybody's program computes."""
    frontier = Frontier()
    for leaf in leaf_hashes(count):
        frontier.add(leaf)
    assert frontier.root().hex() == ROOTS[count]
    assert Tree(leaf_hashes(count)).root().hex() == ROOTS[count]


@pytest.mark.parametrize("case", INCLUSION)
def test_inclusion_proofs_are_those_published(case: tuple[int, int]) -> None:
    """The path is the published one, and leads to the published root."""
    at, size = case
    path = Tree(leaf_hashes(size)).inclusion(at)
    assert tuple(step.hex() for step in path) == INCLUSION[case]
    root = root_by_inclusion(leaf_hashes(size)[at], at, size, path)
    assert root is not None
    assert root.hex() == ROOTS[size]


@pytest.mark.parametrize("case", CONSISTENCY)
def test_consistency_proofs_are_those_published(case: tuple[int, int]) -> None:
    """The path is the published one, and joins the two published roots."""
    first, size = case
    path = Tree(leaf_hashes(size)).consistency(first)
    assert tuple(step.hex() for step in path) == CONSISTENCY[case]
    old, new = bytes.fromhex(ROOTS[first]), bytes.fromhex(ROOTS[size])
    assert is_beginning(first, old, size, new, path)


@pytest.mark.parametrize("size", range(1, 65))
def test_every_proof_of_every_small_tree_holds(size: int) -> None:
    """Every entry of every tree up to 64 is proven, and no other entry in its place.

    Source: the definitions of RFC 9162, section 2.1, worked out here by recursion.
    """
    leaves = [index.to_bytes(32, "big") for index in range(size)]
    tree, root = Tree(leaves), mth(leaves)
    assert tree.root() == root
    for at in range(size):
        path = tree.inclusion(at)
        assert root_by_inclusion(leaves[at], at, size, path) == root
        assert root_by_inclusion(b"x" * 32, at, size, path) != root
        assert root_by_inclusion(leaves[at], at, size, (*path, root)) is None
        first = at + 1
        steps = tree.consistency(first)
        assert is_beginning(first, mth(leaves[:first]), size, root, steps)
        assert not is_beginning(first, b"x" * 32, size, root, steps)


def mth(leaves: list[bytes]) -> bytes:
    """Return the root by the definition: split at the largest power of two below the size."""
    if len(leaves) == 1:
        return leaves[0]
    half = 1 << (len(leaves) - 1).bit_length() - 1
    return node(mth(leaves[:half]), mth(leaves[half:]))
