"""Which tests could not run here, and is that an error?

A test that needs what this machine lacks is skipped with a reason that begins with COULD_NOT. They
are counted at the end; where SOOTLINE_ALL_MUST_RUN is set, one of them makes the run fail.
"""

import os

import pytest

COULD_NOT = "could not run"


def _unable(reporter: pytest.TerminalReporter) -> list[str]:
    reasons = [report.longrepr for report in reporter.stats.get("skipped", [])]
    return [str(reason[2]) for reason in reasons if COULD_NOT in str(reason)]


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    """Print how many tests could not run, and why."""
    unable = _unable(terminalreporter)
    if unable:
        terminalreporter.section(f"{len(unable)} tests {COULD_NOT}")
        for reason in sorted(set(unable)):
            terminalreporter.line(f"{unable.count(reason)} x {reason}")


def pytest_sessionfinish(session: pytest.Session) -> None:
    """Fail the run where everything must run and something could not."""
    reporter = session.config.pluginmanager.get_plugin("terminalreporter")
    must = os.environ.get("SOOTLINE_ALL_MUST_RUN")
    if must and reporter is not None and _unable(reporter) and session.exitstatus == 0:
        session.exitstatus = pytest.ExitCode.TESTS_FAILED
