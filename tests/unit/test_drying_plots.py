"""Whether the pictures of drying hold what they should, and read without colour."""

import xml.etree.ElementTree as ET
from pathlib import Path

import pytest
from tests.unit.drying.drying_cases import TABLE, estimate, room
from tests.washing_night import night

from sootline.cli.main import main
from sootline.core.basis import Band
from sootline.core.drying.curves import drying_curve, limit_by_humidity
from sootline.core.drying.estimating import Wetness
from sootline.core.job.codec import encode
from sootline.core.job.jobs import Job
from sootline.paper.plots import Plot, draw_plot

SVG = "{http://www.w3.org/2000/svg}"
LINE = [(0.0, 55.0), (3.0, 20.0), (7.0, 0.0)]


def drawn(plot: Plot) -> ET.Element:
    """Draw a plot and parse it."""
    return ET.fromstring(draw_plot(plot))  # noqa: S314 - our own text


def plot(**given: object) -> Plot:
    """Make a plot of one falling line."""
    kept: dict[str, object] = {"title": "a <title>", "across": "h", "up": "%", "line": LINE}
    return Plot(**(kept | given))  # type: ignore[arg-type]


def test_a_plot_names_itself_and_its_axes() -> None:
    """For whoever sees it and whoever does not."""
    root = drawn(plot())
    said = [text.text for text in root.iter(f"{SVG}text")]

    assert root.get("aria-label") == "a <title>"
    assert {"a <title>", "h", "%", "0", "55" if "55" in said else "60"} <= set(said)


def test_later_and_drier_lies_right_and_down() -> None:
    """Both axes begin at zero."""
    line = next(drawn(plot()).iter(f"{SVG}polyline")).get("points", "")
    places = [tuple(map(float, point.split(","))) for point in line.split()]

    assert places == sorted(places)
    assert places[0][0] == 84.0
    assert places[-1][1] == 336.0


def test_a_band_is_hatched_and_a_mark_dashed() -> None:
    """No colour is needed to tell them apart."""
    band = ([(0.0, 55.0), (3.0, 0.0)], [(0.0, 55.0), (16.0, 0.0)])
    text = draw_plot(plot(band=band, mark=(30.0, "here")))

    assert text.count("url(#band)") == 1
    assert "stroke-dasharray" in text
    assert "#" not in text.replace("url(#band)", "")


def test_a_point_is_ringed_and_inside_the_axes() -> None:
    """Even where it lies beyond the line."""
    root = drawn(plot(here=((20.0, 90.0), "tonight")))
    ring = next(root.iter(f"{SVG}circle"))

    assert "tonight" in [text.text for text in root.iter(f"{SVG}text")]
    assert 84.0 < float(ring.get("cx", "0")) <= 704.0
    assert 60.0 <= float(ring.get("cy", "0")) < 336.0


@pytest.mark.parametrize("line", [[], [(0.0, 0.0)]])
def test_nothing_to_draw_is_an_empty_frame(line: list[tuple[float, float]]) -> None:
    """No error for a batch that is dry already."""
    assert drawn(plot(line=line)).tag == f"{SVG}svg"


def test_a_curve_ends_where_its_estimate_does() -> None:
    """Earliest, likely, late, and never in disorder on the way."""
    found = estimate()
    curve = drying_curve(found)
    last = curve[-1]

    assert (last.earliest_h, last.likely_h, last.late_h) == pytest.approx(
        (found.minutes.earliest / 60, found.minutes.likely / 60, found.minutes.late / 60)
    )
    assert last.percent == pytest.approx(0.0)
    assert all(point.earliest_h <= point.likely_h <= point.late_h for point in curve)
    assert [point.late_h for point in curve] == sorted(point.late_h for point in curve)


def test_a_dry_batch_has_a_curve_of_no_length() -> None:
    """Its start is its end."""
    dry = estimate(wetness=Wetness(moisture=Band.exactly(0.01), measured=True))

    assert {point.likely_h for point in drying_curve(dry)} == {0.0}


def test_a_rooms_limit_falls_with_humidity() -> None:
    """With the supply's own reading, and without."""
    for supply in (None, ("10 °C", "50 %")):
        points = limit_by_humidity(
            room(volume="200 m3", changes=1, supply=supply), (30, 60, 90), TABLE
        )
        limits = [point.limit_kg_h for point in points]

        assert limits == sorted(limits, reverse=True)


def test_an_unknown_room_has_no_limit_to_draw() -> None:
    """Its volume was not entered."""
    assert limit_by_humidity(room(), (30, 60), TABLE) == ()


def test_the_command_draws_the_room_and_every_estimate(tmp_path: Path) -> None:
    """One file each, whole."""
    job = tmp_path / "night.json"
    job.write_text(encode(Job, night()), encoding="utf-8")

    main(["drying", "times", str(job), "--plots", str(tmp_path)])
    names = sorted(path.name for path in tmp_path.glob("*.svg"))
    assert names[-1] == "room.svg"
    assert len(names) >= 5
    assert all(ET.parse(path) for path in tmp_path.glob("*.svg"))  # noqa: S314 - our own text
