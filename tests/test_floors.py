"""The house stands as planned: floors, exactness, strict types, tidy text."""

from __future__ import annotations

import ast
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

PROJECT = Path(__file__).parent.parent
PACKAGE = PROJECT / "plugin" / "evenseam"
ENGINE = ("exact", "problems", "geometry", "pattern", "piecing", "sizing", "cutting", "sheet")
OPTIONAL = {"highspy"}
"""May be imported inside a function of the cutting floor, never at its top."""


def modules(*floors: str) -> list[Path]:
    return sorted(path for floor in floors for path in (PACKAGE / floor).rglob("*.py"))


def tool(name: str) -> str:
    beside = Path(sys.executable).parent / name
    found = str(beside) if beside.exists() else shutil.which(name)
    assert found, f"{name} is part of the test environment"
    return found


def run(*command: str) -> str:
    done = subprocess.run(command, cwd=PROJECT, capture_output=True, text=True, check=False)
    return "" if done.returncode == 0 else done.stdout + done.stderr


def test_each_floor_imports_only_from_those_below() -> None:
    assert run(tool("lint-imports"), "--no-cache") == ""


def test_types_are_strict() -> None:
    assert run(tool("mypy"), "plugin/evenseam") == ""


def test_code_is_formatted_and_clean() -> None:
    assert run(tool("ruff"), "format", "--check", "plugin", "tests") == ""
    assert run(tool("ruff"), "check", "plugin", "tests") == ""


@pytest.mark.parametrize("path", modules(*ENGINE), ids=lambda path: str(path.relative_to(PACKAGE)))
def test_the_engine_is_exact(path: Path) -> None:
    """No float literal, no call of float, no float-making function of math, below the pictures."""
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(node, ast.Constant):
            assert not isinstance(node.value, float), f"{path.name}:{node.lineno} has the float {node.value}"
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name):
            is_the_door = path.name == "surd.py"
            assert node.func.id != "float" or is_the_door, f"{path.name}:{node.lineno} makes a float"
        if isinstance(node, ast.ImportFrom) and node.module == "math":
            allowed = {"isqrt", "gcd", "lcm", "comb", "factorial", "prod"}
            names = {alias.name for alias in node.names}
            assert names <= allowed, f"{path.name}:{node.lineno} imports {names - allowed} from math"
        if isinstance(node, ast.Import):
            assert all(alias.name != "math" for alias in node.names), f"{path.name}:{node.lineno} imports all of math"


@pytest.mark.parametrize("path", modules(*ENGINE), ids=lambda path: str(path.relative_to(PACKAGE)))
def test_the_engine_needs_only_the_standard_library(path: Path) -> None:
    tree = ast.parse(path.read_text("utf-8"))
    top = set(ast.iter_child_nodes(tree))
    for node in ast.walk(tree):
        names = [alias.name for alias in node.names] if isinstance(node, ast.Import) else []
        names += [node.module or ""] if isinstance(node, ast.ImportFrom) else []
        for name in names:
            root = name.partition(".")[0]
            is_optional = root in OPTIONAL and node not in top and path.is_relative_to(PACKAGE / "cutting")
            assert root in sys.stdlib_module_names or root == "evenseam" or is_optional, f"{path.name} imports {name}"


def test_the_simulator_shares_nothing_with_the_plan_it_checks() -> None:
    allowed = {"evenseam.exact", "evenseam.problems", "evenseam.pattern", "evenseam.sizing.sized"}
    for path in modules("sizing/simulator"):
        for node in ast.walk(ast.parse(path.read_text("utf-8"))):
            if isinstance(node, ast.ImportFrom) and (node.module or "").startswith("evenseam"):
                module = node.module or ""
                is_own = module.startswith("evenseam.sizing.simulator")
                assert is_own or any(module == name or module.startswith(name + ".") for name in allowed), (
                    f"{path.name} imports {module}"
                )


def test_the_top_level_is_fixed() -> None:
    listed = subprocess.run(["git", "ls-files"], cwd=PROJECT, capture_output=True, text=True, check=False)
    if listed.returncode != 0:
        pytest.skip("not a git checkout")
    allowed = {"README.md", "DEVELOPERS.md", "mkdocs.yml", "pyproject.toml", "patterns", "plugin", "tests", "site_src"}
    top = {line.partition("/")[0] for line in listed.stdout.splitlines()}
    assert {name for name in top if not name.startswith(".")} <= allowed


def test_codes_are_unique() -> None:
    import importlib
    import pkgutil

    import evenseam
    from evenseam.problems import Code

    found: dict[int, Code] = {}
    names: dict[str, Code] = {}
    for module in pkgutil.walk_packages(evenseam.__path__, "evenseam."):
        for value in vars(importlib.import_module(module.name)).values():
            if isinstance(value, Code):
                assert found.setdefault(value.number, value) == value, (
                    f"{value} shares its number with {found[value.number]}"
                )
                assert names.setdefault(value.name, value) == value, f"{value} shares its name with {names[value.name]}"
    assert found
