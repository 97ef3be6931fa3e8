# Two commands matter: `make run` and `make test`. Everything else serves them.
PYTHON ?= python3
TOOLS  := .tools
UV     := PYTHONPATH=$(TOOLS) $(TOOLS)/bin/uv
VENV   := .venv
BIN    := $(VENV)/bin
STAMP  := $(VENV)/.synced

.PHONY: run test check fix bench docs lock words clean

run: $(STAMP)
	$(BIN)/sootline demo

test: check
	$(BIN)/pytest --cov --cov-report=term --cov-fail-under=100

check: $(STAMP)
	$(BIN)/ruff format --check src tests benchmarks
	$(BIN)/ruff check src tests benchmarks
	$(BIN)/mypy
	$(BIN)/lint-imports
	$(BIN)/python -m tests.docs.generated --check

fix: $(STAMP)
	$(BIN)/ruff format src tests benchmarks
	$(BIN)/ruff check --fix src tests benchmarks

bench: $(STAMP)
	$(BIN)/python -m benchmarks

docs: $(STAMP)
	$(BIN)/python -m tests.docs.generated

# Compiles the catalogues of words; `check` compares them through tests.docs.generated.
words: $(STAMP)
	$(BIN)/python -m tests.docs.words

# Rewrites the hashed requirement lists from pyproject.toml; run it after a change of dependencies.
lock: $(TOOLS)/bin/uv
	$(UV) pip compile -q --universal --no-annotate --no-header --generate-hashes pyproject.toml -o requirements.txt
	$(UV) pip compile -q --universal --no-annotate --no-header --generate-hashes pyproject.toml --group dev -o requirements-dev.txt

$(TOOLS)/bin/uv:
	$(PYTHON) -m pip install -q --disable-pip-version-check --target $(TOOLS) uv

$(STAMP): $(TOOLS)/bin/uv requirements-dev.txt pyproject.toml
	test -x $(BIN)/python || $(UV) venv -q --python $(PYTHON) $(VENV)
	$(UV) pip sync -q --python $(BIN)/python --require-hashes requirements-dev.txt
	$(UV) pip install -q --python $(BIN)/python --no-deps -e .
	touch $@

clean:
	rm -rf $(VENV) $(TOOLS) dist .pytest_cache .mypy_cache .ruff_cache .import_linter_cache
