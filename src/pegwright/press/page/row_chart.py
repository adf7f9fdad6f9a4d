"""The chart of a mat as one HTML file, to be printed or followed on a screen."""

from __future__ import annotations

from pegwright.lesson import Block, RowChart
from pegwright.press.page.html import html_document, tag

__all__ = ["row_chart_html"]

_SCALE = 4.0  # units of the drawing for a mm


def row_chart_html(chart: RowChart) -> str:
    """Return the page: what to lay out, how a row is worked, the chart, and every row with a box to tick."""
    colours = "".join(
        f'<li><span class="chip">{_chip(one.tint)}</span>{tag("b", one.letter)} '
        f"{tag('span', f'{one.name} × {one.count}')}</li>"
        for one in chart.colours
    )
    rows = "".join(
        f'<li><label><input type="checkbox" data-row="{number}"> {tag("span", text)}</label></li>'
        for number, text in enumerate(chart.rows)
    )
    body = (
        f"<header>{tag('h1', chart.title)}{tag('p', chart.about)}</header><main>"
        f'{tag("h2", chart.colours_heading)}<ul class="chips">{colours}</ul>{_block(chart.working)}'
        f"{tag('h2', chart.chart_heading)}<figure>{_drawing(chart)}</figure>"
        f'{tag("h2", chart.rows_heading)}<ol class="rows">{rows}</ol>{_block(chart.cautions)}</main>'
    )
    return html_document(language=chart.language, title=chart.title, name="chart", body=body)


def _block(block: Block) -> str:
    lines = "".join(tag("li", line) for line in block.lines)
    return f"<section>{tag('h2', block.heading)}<ul>{lines}</ul></section>"


def _chip(tint: str) -> str:
    return f'<svg viewBox="0 0 10 10" aria-hidden="true"><rect width="10" height="10" fill="{tint}"/></svg>'


def _drawing(chart: RowChart) -> str:
    """Return the cells in true proportions, each with its letter; rows numbered at the left, pegs below."""
    wide, high = chart.cell_mm[0] * _SCALE, chart.cell_mm[1] * _SCALE
    across, down = len(chart.letters[0]), len(chart.letters)
    left, below = 30.0, 16.0
    colours = {one.letter: one for one in chart.colours}
    cells = []
    for y, row in enumerate(chart.letters):
        for x, letter in enumerate(row):
            one = colours[letter]
            at = f'x="{left + x * wide:.1f}" y="{y * high:.1f}"'
            ink = "#1d1a17" if one.dark_ink else "#ffffff"
            middle = f'x="{left + (x + 0.5) * wide:.1f}" y="{(y + 0.5) * high + 3:.1f}"'
            cells.append(
                f'<rect {at} width="{wide:.1f}" height="{high:.1f}" fill="{one.tint}"/>'
                f'<text {middle} fill="{ink}">{letter}</text>'
            )
        if y == 0 or (y + 1) % 5 == 0:
            cells.append(f'<text class="no" x="{left - 6:.1f}" y="{(y + 0.5) * high + 3:.1f}">{y + 1}</text>')
    for x in range(0, across + 1, 5):
        cells.append(
            f'<text class="peg" x="{left + x * wide:.1f}" y="{down * high + 12:.1f}">A{x + 1}</text>'
        )
    size = f"{left + across * wide + 14:.1f} {down * high + below:.1f}"
    label = f'role="img" aria-label="{_text(chart.chart_heading)}"'
    return f'<svg viewBox="0 0 {size}" {label}>{"".join(cells)}</svg>'


def _text(text: str) -> str:
    return tag("i", text)[3:-4].replace('"', "&quot;")
