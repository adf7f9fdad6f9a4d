"""Help: every parameter of every command is told in words, on the screen itself."""

from __future__ import annotations

import importlib
import inspect
import re

import pytest

from pegwright.cli.commands import COMMANDS


def screen(run, *arguments):
    """Return what help prints: the rows of its panel, each with its continuation lines joined."""
    code, out, _ = run(*arguments, "--help")
    assert code == 0
    rows: list[str] = []
    for line in out.splitlines():
        inside = re.fullmatch(r"│(.*)│", line)
        if inside is None:
            continue
        text = inside[1]
        if re.match(r" [* ]? {0,2}\S", text):
            rows.append(text.strip())
        else:
            rows[-1] += " " + text.strip()
    return " ".join(out.replace("│", " ").split()), rows


@pytest.mark.parametrize("command", COMMANDS)
def test_every_parameter_has_words(run, command):
    """The first sentence of each parameter, less what cyclopts adds by itself: names, choices, defaults."""
    home, _ = COMMANDS[command]
    module, function = home.split(":")
    parameters = inspect.signature(
        getattr(importlib.import_module(f"pegwright.cli.{module}"), function)
    ).parameters
    _, rows = screen(run, command)
    assert len(rows) == len(parameters)
    several = inspect.Parameter.VAR_POSITIONAL  # listed first, and not named by an option
    listed = sorted(parameters.values(), key=lambda each: each.kind is not several)
    for each, row in zip(listed, rows, strict=True):
        option = each.name.upper() if each.kind is several else "--" + each.name.replace("_", "-")
        assert option in row.split()
        told = re.sub(r"\[(default|choices|required|env)[^\]]*\]", "", row)
        told = re.sub(r"--[a-z-]+|\b[A-Z]{2,}\b|\*", "", told)
        assert len(re.findall(r"[a-z]{2,}", told)) >= 3, f"{command} {option} has no help: {row}"


@pytest.mark.parametrize("command", COMMANDS)
def test_the_list_says_what_the_command_says(run, command):
    """What the list prints without loading the command is the first line of its docstring."""
    home, about = COMMANDS[command]
    module, function = home.split(":")
    loaded = getattr(importlib.import_module(f"pegwright.cli.{module}"), function)
    assert inspect.getdoc(loaded).splitlines()[0] == about
    assert about in screen(run, command)[0]
    assert re.sub(r"\s", "", f"{command}{about}") in re.sub(r"\s", "", screen(run)[0])
