"""Results -> Markdown, HTML, drawings and data."""
