"""The job of the record is a job file: whatever takes one takes it, and answers the same."""

from dataclasses import replace
from pathlib import Path

import pytest
from django.test import override_settings
from tests.integration.store.test_due_pages import _act, _book
from tests.integration.store_acts import store_in
from tests.integration.store_databases import Databases

from sootline.cli.main import main
from sootline.tasks.assemble_job import assemble_job
from sootline.tasks.decide import decide_job
from sootline.tasks.take_in_job import take_in_job
from sootline.wiring.demo import demo_job
from sootline.wiring.jobs import read_job
from sootline.wiring.rules import RULES


def test_the_job_comes_out_and_is_decided_as_it_went_in(
    databases: Databases, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Pieces, people and calls; the same washing for each piece as the file that went in."""
    database = databases.fresh("sqlite")
    store, job = store_in(database), demo_job()
    take_in_job(_book(store), _act("enter"), job)
    out = tmp_path / "job.json"
    with override_settings(DATA_DIR=database.folder):
        assert main(["export", str(out), "--job"]) == 0
    assert f"{len(job.components)} pieces" in " ".join(capsys.readouterr().out.split())

    found = read_job(out)

    assert {one.id for one in found.components} == {one.id for one in job.components}
    assert found.components == assemble_job(_book(store).register, now=found.now).components
    before, after = decide_job(RULES, job), decide_job(RULES, replace(found, now=job.now))
    fates = [{one.component: one.fate for one in each.decisions} for each in (before, after)]
    assert fates[0] == fates[1]
