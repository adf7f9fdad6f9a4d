"""How tests and benches start the browser."""

FLAGS = [
    "--no-sandbox",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--disable-gpu",  # software compositing: a graphics card played by software is far slower
]
