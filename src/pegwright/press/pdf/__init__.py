"""What is printed: the handout and the other sheets, typeset as tagged PDF."""
