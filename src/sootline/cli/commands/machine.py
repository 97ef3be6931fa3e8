"""`sootline machine`: spin, bath, cost and count of washing, and what is recorded against soil."""

import argparse
from pathlib import Path

from sootline.cli.commands.machine_text import (
    bath_lines,
    checked_lines,
    cost_lines,
    record_lines,
    spin_lines,
)
from sootline.cli.output import deliver
from sootline.cli.parser import CommandParser
from sootline.cli.registry import DONE, PROBLEM
from sootline.core.basis import ComponentId, Quantity
from sootline.core.machines import CostSheet, reckon_cost
from sootline.core.machines.bath_sheet import BathAsked, reckon_bath
from sootline.core.machines.detergents import Detergent
from sootline.core.machines.spin_sheet import SpinAsked, reckon_spin
from sootline.tasks.check_machines import check_machines
from sootline.tasks.record_reductions import record_reductions
from sootline.wiring.jobs import read_job
from sootline.wiring.practice import load_assumptions, load_reductions, read_sheet
from sootline.wiring.rules import RULES


def add_arguments(parser: CommandParser) -> None:
    """Add `check JOB`, `spin`, `bath`, `cost FILE` and `record JOB`."""
    kinds = parser.add_sub_commands("what")
    check = kinds.add_parser("check", help="machine.help.check")
    check.add_argument("job", type=Path, metavar="JOB", help="cli.help.job_file")
    spin = kinds.add_parser("spin", help="machine.help.spin")
    spin.add_argument("--diameter", required=True, metavar="LENGTH", help="machine.help.diameter")
    spin.add_argument("--speed", metavar="RPM", help="machine.help.speed")
    spin.add_argument("--limit", required=True, metavar="G", help="machine.help.limit")
    spin.add_argument("--diameter-error", metavar="SHARE", help="machine.help.diameter_error")
    spin.add_argument("--speed-error", metavar="SHARE", help="machine.help.speed_error")
    _add_bath(kinds.add_parser("bath", help="machine.help.bath"))
    cost = kinds.add_parser("cost", help="machine.help.cost")
    cost.add_argument("sheet", type=Path, metavar="FILE", help="machine.help.sheet")
    record = kinds.add_parser("record", help="machine.help.record")
    record.add_argument("job", type=Path, metavar="JOB", help="cli.help.job_file")
    record.add_argument("--component", metavar="ID", help="machine.help.component")


def _add_bath(bath: CommandParser) -> None:
    bath.add_argument("--water", required=True, metavar="VOLUME", help="machine.help.water")
    bath.add_argument("--load", required=True, metavar="MASS", help="machine.help.load")
    bath.add_argument("--inlet", required=True, metavar="TEMP", help="machine.help.inlet")
    bath.add_argument("--to", required=True, metavar="TEMP", help="machine.help.to")
    bath.add_argument("--hardness", metavar="HARDNESS", help="machine.help.hardness")
    bath.add_argument("--product", type=Path, metavar="FILE", help="machine.help.product")
    bath.add_argument("--target", type=float, default=0.01, help="machine.help.target")
    bath.add_argument("--metered", action="store_true", help="machine.help.metered")
    bath.add_argument("--unspun", action="store_true", help="machine.help.unspun")


def run(options: argparse.Namespace) -> int:
    """Answer one question; 1 when a programme goes beyond a limit in force."""
    return {
        "check": _check,
        "spin": _spin,
        "bath": _bath,
        "cost": _cost,
        "record": _record,
    }[options.what](options)


def _check(options: argparse.Namespace) -> int:
    report = check_machines(RULES, read_job(options.job), load_assumptions())
    deliver(report, checked_lines(report, lang=options.lang), options)
    return PROBLEM if any(one.refused for one in report.programmes) else DONE


def _spin(options: argparse.Namespace) -> int:
    asked = SpinAsked(
        diameter=Quantity.parse(options.diameter),
        limit=Quantity.parse(options.limit),
        speed=_given(options.speed),
        diameter_error=_given(options.diameter_error),
        speed_error=_given(options.speed_error),
    )
    sheet = reckon_spin(asked, load_assumptions())
    deliver(sheet, spin_lines(sheet, lang=options.lang), options)
    return PROBLEM if sheet.too_fast else DONE


def _bath(options: argparse.Namespace) -> int:
    asked = BathAsked(
        water=Quantity.parse(options.water),
        load=Quantity.parse(options.load),
        inlet=Quantity.parse(options.inlet),
        bath=Quantity.parse(options.to),
        hardness=_given(options.hardness),
        detergent=read_sheet(Detergent, options.product) if options.product else None,
        target=options.target,
        spun=not options.unspun,
        metered=options.metered,
    )
    sheet = reckon_bath(asked, load_assumptions())
    deliver(sheet, bath_lines(sheet, lang=options.lang), options)
    return DONE


def _cost(options: argparse.Namespace) -> int:
    sheet = read_sheet(CostSheet, options.sheet)
    cost = reckon_cost(sheet)
    deliver(cost, cost_lines(sheet, cost, lang=options.lang), options)
    return DONE


def _record(options: argparse.Namespace) -> int:
    job = read_job(options.job)
    only = ComponentId(options.component) if options.component else None
    records = record_reductions(RULES, job, load_reductions(), component=only)
    deliver(records, record_lines(records, lang=options.lang), options)
    return DONE


def _given(text: str | None) -> Quantity | None:
    return None if text is None else Quantity.parse(text)
