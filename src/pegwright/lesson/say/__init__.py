"""The words of a lesson: one Fluent file a language, the sentence of each move, the text of each mistake."""
