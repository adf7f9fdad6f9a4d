"""`pegwright calibrate`: the worked example of its page, nonsense, and slips in the line."""

from __future__ import annotations

import json

import msgspec
import pytest

from pegwright.pattern import BandType

# Made up from C10 = 0.150, C01 = 0.090 MPa, bore 13.5 mm, 1.12 g/cm³, read with errors of half a millimetre:
# the worked example of docs/calibration.md, whose own numbers are run as a doctest.
HUNG = "50=26.2,100=29.8,150=34.1,200=39.8,250=47.4,300=55.7,350=65.3"
HARBOUR = ("--flat", "24.3", "--thickness", "1.5", "--weight", "9.4", "--hung", HUNG, "--name", "harbour")


def test_the_worked_example_finds_the_rubber_it_was_made_from(run):
    code, out, _ = run("calibrate", *HARBOUR, "--json")
    value = json.loads(out)
    assert (code, value["ok"], value["findings"]) == (0, True, [])
    band = msgspec.convert(value["band"], BandType)
    assert (band.name, band.thickness_mm, band.weight_100_g) == ("harbour", 1.5, 9.4)
    assert value["rubber"]["form"] == "mooney-rivlin"
    c10, c01 = value["rubber"]["constants_mpa"]
    true = [(value["bore_mm"], 13.5), (value["density_g_cm3"], 1.12), (c10, 0.150), (c01, 0.090)]
    for found, made_from in true:
        assert abs(found["value"] - made_from) < 2 * max(found["error"], found["again"])
    assert value["rubber"]["shear_mpa"]["value"] == pytest.approx(2 * (c10["value"] + c01["value"]))


def test_the_words_hold_what_is_to_be_pasted(run):
    code, out, _ = run("calibrate", *HARBOUR)
    assert code == 0
    pasted = next(line for line in out.splitlines() if line.strip().startswith("{"))
    assert msgspec.json.decode(pasted, type=BandType).bore_mm == pytest.approx(13.56, abs=0.01)
    assert "bore 13.56 ± 0.2" in out
    assert "the one to use" in out


def test_nonsense_is_a_finding_and_no_band(run):
    code, out, _ = run("calibrate", "--flat", "2.43", "--thickness", "1.5", "--json")
    value = json.loads(out)
    assert (code, value["ok"], value["band"]) == (1, False, None)
    assert [one["code"] for one in value["findings"]] == ["measure-nonsense"]
    code, out, _ = run("calibrate", "--flat", "24.3", "--thickness", "1.5", "--hung", "100=29.4,200=19.9")
    assert code == 1
    assert "laid flat the band is 24.3 mm long already" in out


@pytest.mark.parametrize(
    ("options", "told"),
    [(["--hung", "100"], "GRAMS=MM"), (["--name", ""], "name"), (["--hook", "-1"], "more than 0")],
)
def test_slips_in_the_line(run, options, told):
    code, _, err = run("calibrate", "--flat", "24.3", "--thickness", "1.5", *options)
    assert code == 2
    assert told in err
