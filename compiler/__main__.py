"""`python -m setwright` is the command `setwright`."""

from setwright.cli import main

if __name__ == "__main__":
    main()
