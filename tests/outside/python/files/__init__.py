"""Parts of check_files.py, one for each kind of file."""
