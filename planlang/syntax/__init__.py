"""Text -> tree: files, spans, diagnostics, parsing with recovery."""
