"""Fills a form in with pypdf, which knows nothing of it: fill_pypdf.py IN OUT VALUES

VALUES has a line for each field: its name, a tab, what is typed, or the word of the box that is ticked.
"""
import sys

import pypdf
from pypdf.generic import NameObject, TextStringObject

source, target, values = sys.argv[1:]
with open(values, encoding="utf-8") as lines:
    typed = dict(line.rstrip("\n").split("\t") for line in lines)
writer = pypdf.PdfWriter()
writer.clone_document_from_reader(pypdf.PdfReader(source))
for field in writer._root_object["/AcroForm"]["/Fields"]:
    field = field.get_object()
    if field["/T"] not in typed:
        continue
    value = typed[field["/T"]]
    if field["/FT"] == "/Tx":
        field[NameObject("/V")] = TextStringObject(value)
        continue
    field[NameObject("/V")] = NameObject("/" + value)
    for box in field["/Kids"]:
        box = box.get_object()
        on = "/" + value in box["/AP"]["/N"]
        box[NameObject("/AS")] = NameObject("/" + value if on else "/Off")
with open(target, "wb") as out:
    writer.write(out)
