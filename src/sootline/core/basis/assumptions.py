"""On which figures does an estimate rest that nobody measured here?

They come from a table of data with a source for each; a department's own measurement always wins.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property

from sootline.core.basis.bands import Band
from sootline.core.basis.findings import Confidence, Ground
from sootline.core.basis.ids import EditionId, RuleId


@dataclass(frozen=True, kw_only=True)
class Assumption:
    """One figure with its interval and where it is from.

    Args:
        id: what it is ("dry.critical_moisture").
        unit: of the figure; "1" has none.
        source: a citation, or "value from memory".
    """

    id: str
    band: Band
    unit: str
    source: str
    confidence: Confidence

    @property
    def ground(self) -> Ground:
        """Return what a finding cites when it rests on this figure."""
        return Ground(
            rule=RuleId(self.id),
            edition=EditionId("practice/assumptions"),
            source=self.source,
            confidence=self.confidence,
        )


@dataclass(frozen=True, kw_only=True)
class Assumptions:
    """The table of figures."""

    assumption: tuple[Assumption, ...]

    @cached_property
    def _rows(self) -> Mapping[str, Assumption]:
        return {one.id: one for one in self.assumption}

    def row(self, name: str) -> Assumption:
        """Return one figure with its source.

        Raises:
            KeyError: the table does not hold it.
        """
        return self._rows[name]

    def band(self, name: str) -> Band:
        """Return the interval of one figure.

        Raises:
            KeyError: the table does not hold it.
        """
        return self._rows[name].band
