// Fills a form in with pdf-lib, which knows nothing of it: node fill_pdflib.js IN OUT VALUES
// VALUES has a line for each field: its name, a tab, what is typed, or the word of the box that is ticked.
// Run by hand: README.md.
const fs = require("fs");
const {PDFDocument, PDFTextField} = require("pdf-lib");

async function fill([source, target, values]) {
    const file = await PDFDocument.load(fs.readFileSync(source));
    for (const line of fs.readFileSync(values, "utf8").trimEnd().split("\n")) {
        const [name, value] = line.split("\t");
        const field = file.getForm().getField(name);
        if (field instanceof PDFTextField) field.setText(value);
        else field.select(value);
    }
    // It draws with a face of its own, and throws where that lacks a letter, as Ł and ⅜.
    fs.writeFileSync(target, await file.save({updateFieldAppearances: false}));
}

fill(process.argv.slice(2)).catch((error) => {
    console.error(error);
    process.exitCode = 1;
});
