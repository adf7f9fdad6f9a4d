# Two commands do everything: `make demo` runs the main job on the built-in pieces, `make test` passes the tests.
PYTHON ?= python3
VENV := .venv
BIN := $(VENV)/bin

.PHONY: demo test lint bench clean

$(VENV)/.installed: pyproject.toml
	test -x $(BIN)/python || $(PYTHON) -m venv $(VENV)
	$(BIN)/python -m pip install --quiet --disable-pip-version-check -e .
	touch $@

$(VENV)/.tested: pyproject.toml $(VENV)/.installed
	$(BIN)/python -m pip install --quiet --disable-pip-version-check -e '.[test,dev]'
	touch $@

demo: $(VENV)/.installed
	$(BIN)/pegwright demo build/demo

lint: $(VENV)/.tested
	$(BIN)/ruff format --check src tests bench
	$(BIN)/ruff check src tests bench
	$(BIN)/lint-imports
	$(BIN)/mypy

test: lint
	$(BIN)/python -m pytest -n auto --dist loadgroup

clean:
	rm -rf build $(VENV)
