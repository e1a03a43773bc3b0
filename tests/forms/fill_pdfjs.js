// Fills a form in with pdf.js, which knows nothing of it: node fill_pdfjs.js IN OUT VALUES
// VALUES has a line for each field: its name, a tab, what is typed, or the word of the box that is ticked.
const fs = require("fs");
const pdfjs = require("/usr/share/javascript/pdf/build/pdf.js");

// Viewers tell the store of a box whether it is the one that is ticked.
const typed = (widget, value) =>
    widget.radioButton ? {value: value === widget.buttonValue} : {value};

async function fill([source, target, values]) {
    const wanted = new Map(fs.readFileSync(values, "utf8").trimEnd().split("\n").map((line) => line.split("\t")));
    const file = await pdfjs.getDocument({data: new Uint8Array(fs.readFileSync(source)), verbosity: 0}).promise;
    for (let number = 1; number <= file.numPages; ++number) {
        const page = await file.getPage(number);
        for (const widget of await page.getAnnotations())
            if (wanted.has(widget.fieldName))
                file.annotationStorage.setValue(widget.id, typed(widget, wanted.get(widget.fieldName)));
    }
    fs.writeFileSync(target, await file.saveDocument());
    await file.destroy();
}

fill(process.argv.slice(2)).catch((error) => {
    console.error(error);
    process.exitCode = 1;
});
