"""The teacher's table of slips: exact round trip, and every fault told."""

from __future__ import annotations

import json

import pytest

from pegwright.rehearsal.likelihood import Weights, read_weights, write_weights


def test_the_table_reads_back_from_its_text():
    text = write_weights(Weights())
    reading = read_weights(text)
    assert reading.findings == ()
    assert reading.weights == Weights()
    assert write_weights(reading.weights) == text


@pytest.mark.parametrize(
    ("change", "code"),
    [
        ({"shoes": 1}, "not-a-slip-table"),
        ({"slips": {"sneeze": "often"}}, "slip-unknown"),
        ({"slips": {"sneeze": "now and then"}}, "slip-class-unknown"),
    ],
)
def test_a_fault_in_the_table_is_found(change, code):
    text = {**json.loads(write_weights(Weights())), **change}
    assert code in {found.code for found in read_weights(json.dumps(text).encode()).findings}
