"""Fills a form in with poppler, which knows nothing of it: fill_poppler.py IN OUT VALUES

VALUES has a line for each field: its name, a tab, what is typed; of a box what it stands for, as the form tells it.
"""
import pathlib
import sys

import gi

gi.require_version("Poppler", "0.18")
from gi.repository import Gio, Poppler  # noqa: E402

source, target, values = sys.argv[1:]
with open(values, encoding="utf-8") as lines:
    typed = dict(line.rstrip("\n").split("\t") for line in lines)
document = Poppler.Document.new_from_gfile(Gio.File.new_for_path(source), None, None)
for number in range(document.get_n_pages()):
    page = document.get_page(number)
    for mapping in page.get_form_field_mapping():
        field = mapping.field
        if field.get_field_type() == Poppler.FormFieldType.TEXT and field.get_name() in typed:
            field.text_set_text(typed[field.get_name()])
        if field.get_field_type() == Poppler.FormFieldType.BUTTON and field.get_alternate_ui_name() in typed:
            field.button_set_state(True)
document.save(pathlib.Path(target).resolve().as_uri())
