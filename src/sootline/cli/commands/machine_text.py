"""How are a washer's figures said?"""

from collections.abc import Iterator

from sootline.cli.output import finding_lines
from sootline.cli.pieces import wrapped
from sootline.core.basis import Band
from sootline.core.machines import Cost, CostSheet, Published
from sootline.core.machines.bath_sheet import BathSheet
from sootline.core.machines.spin_sheet import SpinSheet
from sootline.tasks.check_machines import MachineReport
from sootline.tasks.record_reductions import ComponentRecord
from sootline.words import name, say


def checked_lines(report: MachineReport, *, lang: str) -> Iterator[str]:
    """Say every programme's findings, then the pieces that bear less."""
    yield from finding_lines(report.findings, lang=lang)
    for one in report.programmes:
        message = "machine.line.refused" if one.refused else "machine.line.programme"
        values = {"washer": one.washer, "programme": one.programme}
        yield from ("", say(message, values, lang=lang))
        yield from finding_lines(one.findings, lang=lang)
    if report.stricter:
        yield from ("", say("machine.line.stricter", lang=lang))
        yield from finding_lines(report.stricter, lang=lang)


def spin_lines(sheet: SpinSheet, *, lang: str) -> Iterator[str]:
    """Say what a speed comes to, and the highest to set."""
    if sheet.reached_g is not None:
        message = "machine.line.too_fast" if sheet.too_fast else "machine.line.reached"
        edge = 2 * sheet.spread * sheet.reached_g
        values = {
            "speed": str(sheet.speed),
            "g": f"{sheet.reached_g:.1f}",
            "edge": f"{edge:.1f}",
            "limit": str(sheet.limit),
        }
        yield from wrapped(say(message, values, lang=lang), indent=0)
    values = {
        "limit": str(sheet.limit),
        "set_g": str(sheet.set_g),
        "speed": str(sheet.set_rpm),
        "bare": str(sheet.bare_rpm),
        "percent": f"{sheet.spread * 100:.1f}",
    }
    yield from wrapped(say("machine.line.set", values, lang=lang), indent=0)


def bath_lines(sheet: BathSheet, *, lang: str) -> Iterator[str]:
    """Say heat, hardness, dose and rinses."""
    if sheet.heat_kwh is not None:
        values = {"heat": _band(sheet.heat_kwh)}
        yield from wrapped(say("machine.line.heat", values, lang=lang), indent=0)
    if sheet.hardness is not None:
        values = {"hardness": str(sheet.asked.hardness), "class": sheet.hardness}
        yield from wrapped(say("machine.line.hardness", values, lang=lang), indent=0)
    if sheet.dose_ml is not None and sheet.asked.detergent is not None:
        values = {"product": sheet.asked.detergent.name, "dose": f"{sheet.dose_ml:.0f}"}
        yield from wrapped(say("machine.line.dose", values, lang=lang), indent=0)
    values = {
        "rinses": str(sheet.rinses.rinses),
        "liquor": f"{sheet.liquor_l_kg:.1f}",
        "share": f"{sheet.rinses.carry_over * 100:.0f}",
        "left": _percent(sheet.rinses.left.likely),
        "low": _percent(sheet.rinses.left.low),
        "high": _percent(sheet.rinses.left.high),
    }
    yield from wrapped(say("machine.line.rinses", values, lang=lang), indent=0)
    yield from finding_lines(sheet.findings, lang=lang)


def cost_lines(sheet: CostSheet, cost: Cost, *, lang: str) -> Iterator[str]:
    """Say what a load and a set cost, and against the contract."""
    money = {"currency": sheet.currency}
    for kind, share in cost.shares:
        values = {"cost_kind": kind.value, "amount": f"{share * cost.load:.2f}", **money}
        percent = {"percent": f"{share * 100:.0f}"}
        yield from wrapped(say("machine.line.cost_item", values | percent, lang=lang))
    values = {"load": f"{cost.load:.2f}", "set": f"{cost.set:.2f}", **money}
    yield from wrapped(say("machine.line.cost", values, lang=lang), indent=0)
    if cost.set_all_in is not None:
        values = {"set": f"{cost.set_all_in:.2f}", **money}
        yield from wrapped(say("machine.line.cost_all_in", values, lang=lang), indent=0)
    if cost.break_even is not None:
        values = {"sets": f"{cost.break_even:.0f}", "contract": f"{sheet.contract:.2f}", **money}
        yield from wrapped(say("machine.line.break_even", values, lang=lang), indent=0)
    yield from finding_lines(cost.findings, lang=lang)


def record_lines(records: tuple[ComponentRecord, ...], *, lang: str) -> Iterator[str]:
    """Say each step with what is published of such steps, and what cannot be claimed."""
    for one in records:
        yield from ("", say("machine.line.component", {"component": one.component}, lang=lang))
        yield from finding_lines(one.washes, lang=lang)
        for line in one.record.lines:
            values = {
                "on": str(line.event.on),
                "act": line.event.act.value,
                "method": line.event.method.value,
                "who": line.event.who or "-",
            }
            yield from wrapped(say("machine.line.event", values, lang=lang))
            for published in line.published:
                yield from wrapped(_published(published, lang), indent=6)
    for result in records[0].record.results if records else ():
        values = {"on": str(result.on), "by": result.by, "result": result.text}
        yield from wrapped(say("machine.line.laboratory", values, lang=lang))
    yield from ("", say("machine.line.not_claimed", lang=lang))
    for message in records[0].record.not_claimed if records else ():
        yield from wrapped(say(message, lang=lang))


def _published(one: Published, lang: str) -> str:
    values = {
        "substances": one.substances,
        "measured": one.measured.value,
        "low": f"{one.low:g}",
        "high": f"{one.high:g}",
        "source": one.source,
        "confidence": name("confidence", one.confidence.value, lang=lang),
        "remark": say(one.remark, lang=lang) if one.remark else "",
    }
    if one.high < 0:
        values |= {"low": f"{-one.high:g}"}
        return say("machine.line.published_more", values, lang=lang)
    message = "machine.line.published_one" if one.low == one.high else "machine.line.published"
    return say(message, values, lang=lang)


def _band(band: Band) -> str:
    return f"{band.likely:.1f} ({band.low:.1f}-{band.high:.1f})"


def _percent(share: float) -> str:
    return f"{share * 100:.2g}"
