"""Step pictures, stills and comparisons as SVG."""
