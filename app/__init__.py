"""How people reach the core: the window, the headless commands, the PDF packet."""
