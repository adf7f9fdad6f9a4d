"""Pictures every whole piece of the workshop from the front, for the docs: `python -m examples.pictures`."""

from __future__ import annotations

from pathlib import Path

from pegwright.workshop import PictureOrder, example_files, make_pictures, open_pattern, work, write_into

FOLDER = Path(__file__).parents[1] / "docs" / "pictures"
WIDTHS_PX = {"herring-tail": 600, "lobster-pot": 500, "riding-lights": 800, "slack-water-mat": 310}
USUAL_PX = 900


def main() -> None:
    """Write them all, and say how large the pieces and the files are."""
    for name, path in example_files().items():
        pattern = open_pattern(path).pattern
        if pattern is None or "/" in name:
            continue
        for lie in make_pictures(work(pattern), PictureOrder(width_px=WIDTHS_PX.get(name, USUAL_PX))):
            for one in lie.painted:
                write_into(FOLDER, f"{name}.png", one.data)
                size = f"{lie.length_mm:.0f} × {lie.width_mm:.0f} × {lie.height_mm:.0f} mm"
                rest = "at rest" if lie.at_rest else "NOT at rest"
                print(
                    f"{name}: {size}, {rest}, {lie.crossings} crossings, {len(one.data) / 1000:.0f} kB",
                    flush=True,
                )


if __name__ == "__main__":
    main()
