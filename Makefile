# What a maker or a developer types. Every target prepares the machine first; see tools/prepare.
.NOTPARALLEL:
.PHONY: help site test lint goldens bench contact wheel lock clean

PY := .venv/bin/python

help:
	@echo "make site     build the demo shop in content/ into output/"
	@echo "make test     lint, types and all tests"
	@echo "make lint     lint and types alone"
	@echo "make goldens  write the expected files of the tests anew and show the difference"
	@echo "make bench    time the work and print a small table"
	@echo "make contact  every drawing of the demo as PNGs, side by side, in output-contact/"
	@echo "make wheel    a wheel in dist/"
	@echo "make lock     resolve requirements/*.txt anew (needs uv)"
	@echo "make clean    remove .venv, caches and dist/ (output/ stays)"

site:
	@tools/prepare run
	@$(PY) -m sitegen build

test: lint
	$(PY) -m pytest -q -n 2 --dist loadgroup

lint:
	@tools/prepare test
	$(PY) -m ruff check .
	$(PY) -m mypy

goldens:
	@tools/prepare test
	$(PY) -m pytest -q -s --update-goldens

bench:
	@tools/prepare test
	$(PY) -m benchmarks.run
	$(PY) -m benchmarks.stitches
	$(PY) -m benchmarks.drawings

contact:
	@tools/prepare test
	$(PY) -m tools.contact_sheet output-contact

wheel:
	@tools/prepare test
	$(PY) -m build --no-isolation --wheel

lock:
	tools/lock

clean:
	rm -rf .venv .pytest_cache .mypy_cache .ruff_cache .hypothesis dist
