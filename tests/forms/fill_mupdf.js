// Fills a form in with MuPDF, which knows nothing of it: mutool run fill_mupdf.js IN OUT VALUES
// VALUES has a line for each blank: what belongs there as the form tells it, a tab, what is typed; of a box an x.
var file = new PDFDocument(scriptArgs[0]);
var values = {};
read(scriptArgs[2]).split("\n").forEach(function (line) {
    var parts = line.split("\t");
    if (parts.length === 2) values[parts[0]] = parts[1];
});
for (var n = 0; n < file.countPages(); ++n) {
    var page = file.loadPage(n);
    page.getWidgets().forEach(function (widget) {
        var typed = values[widget.getLabel()];
        if (typed === undefined) return;
        if (widget.getFieldType() === "text") widget.setTextValue(typed);
        else widget.toggle();
        widget.update();
    });
    page.update();
}
file.save(scriptArgs[1], "incremental");
