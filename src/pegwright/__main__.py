"""`python -m pegwright` is the command line."""

from pegwright.cli import main

if __name__ == "__main__":
    main()
