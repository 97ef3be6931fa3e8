"""What the program must never claim, and that the scan would notice."""

from pathlib import Path

import pytest
from tests.docs.message_ids import entries

from sootline.words import languages
from sootline.words.never_say import exemptions, find_claims, listed_languages

ROOT = Path(__file__).parents[2]
PAGES = sorted(
    path
    for path in (*ROOT.glob("*.md"), *(ROOT / "docs").rglob("*.md"),
                 *(ROOT / "src" / "sootline").rglob("templates/**/*.html"))
    if path.is_file()
)  # fmt: skip


@pytest.mark.parametrize("lang", languages())
def test_no_text_claims_what_nobody_recorded(lang: str) -> None:
    """Every text of every catalogue stays with what was recorded."""
    found = {
        entry.message_id: claims
        for entry in entries(lang).values()
        if (claims := find_claims(" / ".join(entry.forms), lang))
    }

    assert found == {}


@pytest.mark.parametrize("page", PAGES, ids=lambda page: str(page.relative_to(ROOT)))
def test_no_page_claims_what_nobody_recorded(page: Path) -> None:
    """README, documents and screens stay with what was recorded."""
    assert find_claims(page.read_text(encoding="utf-8"), "en") == ()


def test_the_readme_is_among_the_pages() -> None:
    """The scan looks at the page people read first."""
    assert ROOT / "README.md" in PAGES


def test_every_language_with_words_has_a_list() -> None:
    """No language is spoken unwatched; French is watched before it is spoken."""
    assert {*languages(), "fr"} <= set(listed_languages())


@pytest.mark.parametrize("lang", listed_languages())
def test_every_exception_has_a_reason_and_is_needed(lang: str) -> None:
    """An exception says why, and excepts something the list would otherwise find."""
    for entry in exemptions(lang):
        assert len(entry.reason) > 15
        assert find_claims(entry.phrase, lang) == ()
        assert find_claims(entry.phrase.replace(" ", " x "), lang) != ()


@pytest.mark.parametrize(
    ("lang", "sentence", "word"),
    [
        ("en", "The coat is clean.", "clean"),
        ("en", "Coat 4 was cleaned at 04:10.", "cleaned"),
        ("en", "The hood may be worn safely.", "safely"),
        ("en", "This department is Compliant.", "compliant"),
        ("en", "Your gear complies.", "complies"),
        ("en", "A certified set.", "certified"),
        ("en", "All pieces are decontaminated.", "decontaminated"),
        ("en", "The mask is sterile.", "sterile"),
        ("en", "Set 7 is ready for\nuse.", "ready for use"),
        ("en", "The liner is free of asbestos.", "free of asbestos"),
        ("en", "It is **cle**an.", "clean"),
        ("en", "After advanced cleaning it is clean.", "clean"),
        ("en", "It is cl\u200bean.", "clean"),
        ("es", "La chaqueta está limpia.", "limpia"),
        ("es", "El casco es seguro.", "seguro"),
        ("es", "Equipo certificado.", "certificado"),
        ("es", "Todo quedó descontaminado.", "descontaminado"),
        ("es", "Los guantes están listos para usar.", "listos para usar"),
        ("es", "El equipo cumple la norma.", "cumple"),
        ("es", "Máscara ESTÉRIL.", "estéril"),
        ("fr", "Le manteau est propre.", "propre"),
        ("fr", "La cagoule est sûre.", "sûre"),
        ("fr", "Tenue conforme.", "conforme"),
        ("fr", "Les gants sont décontaminés.", "décontaminés"),
        ("fr", "Casque certifié, stérile.", "certifié"),
        ("fr", "Prête à l’emploi.", "prête à l'emploi"),
    ],
)
def test_a_claim_is_found(lang: str, sentence: str, word: str) -> None:
    """A bad sentence is caught, inflected, broken over lines or marked up."""
    assert word in [claim.words for claim in find_claims(sentence, lang)]


@pytest.mark.parametrize(
    ("lang", "sentence"),
    [
        ("en", "Needs advanced cleaning; the safety officer decides."),
        ("en", "Routine cleaning by the member. Read the safety data sheet."),
        ("en", "The wash was recorded by 118 at 04:10."),
        ("es", "Necesita limpieza avanzada; decide el oficial de seguridad."),
        ("fr", "Nettoyage avancé ; l'agent de sécurité décide. Posé sur le râtelier."),
    ],
)
def test_an_act_or_an_office_is_no_claim(lang: str, sentence: str) -> None:
    """Names of acts, offices and documents pass."""
    assert find_claims(sentence, lang) == ()
