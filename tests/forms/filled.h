#pragma once
// Field sheets, filled in as a viewer would. All figures invented.

#include <map>
#include <sstream>
#include <string>
#include <utility>
#include <vector>

#include "cli/start.h"
#include "job/read.h"
#include "job/text.h"
#include "output/form_reader.h"
#include "output/pdf.h"
#include "output/qpdf.h"
#include "sheets/blanks/field_sheet.h"
#include "support/kit.h"
#include "support/program.h"

namespace kerfpacket::tests {

using Values = std::map<std::string, std::string>;

inline sheets::FieldSheets blank_sheets(const std::vector<sheets::Field>& fields, const std::string& language = "en",
                                        measure::Unit unit = measure::Unit::inch) {
    return sheets::make_field_sheets(fields, job::find_media("na_letter_8.5x11in").value(), unit, kit(language));
}

inline std::string blank_form(const std::vector<sheets::Field>& fields = {sheets::Field::arch},
                              const std::string& language = "en", measure::Unit unit = measure::Unit::inch) {
    const sheets::FieldSheets sheets = blank_sheets(fields, language, unit);
    return output::form_pdf(sheets.document, sheets.form, kit(language).faces);
}

inline std::string written(QPDF& pdf) {
    QPDFWriter writer(pdf);
    writer.setOutputMemory();
    writer.setStaticID(true);
    writer.write();
    const auto buffer = writer.getBufferSharedPointer();
    return {reinterpret_cast<const char*>(buffer->getBuffer()), buffer->getSize()};
}

/// The bytes must outlive it.
inline void open(QPDF& pdf, const std::string& bytes) {
    pdf.setSuppressWarnings(true);
    pdf.processMemoryFile("form", bytes.data(), bytes.size());
}
void open(QPDF& pdf, std::string&& bytes) = delete;

inline std::vector<QPDFObjectHandle> fields_of(QPDF& pdf) {
    return pdf.getRoot().getKey("/AcroForm").getKey("/Fields").getArrayAsVector();
}

/// Values by the names of the fields: text, or the word of the box that is ticked.
inline std::string filled(const std::string& form, const Values& values) {
    QPDF pdf;
    open(pdf, form);
    for (QPDFObjectHandle field : fields_of(pdf)) {
        const auto value = values.find(field.getKey("/T").getUTF8Value());
        if (value == values.end()) continue;
        if (field.getKey("/FT").isNameAndEquals("/Tx")) {
            field.replaceKey("/V", QPDFObjectHandle::newUnicodeString(value->second));
            continue;
        }
        const std::string state = "/" + value->second;
        field.replaceKey("/V", QPDFObjectHandle::newName(state));
        for (QPDFObjectHandle box : field.getKey("/Kids").getArrayAsVector())
            box.replaceKey("/AS",
                           QPDFObjectHandle::newName(box.getKey("/AP").getKey("/N").hasKey(state) ? state : "/Off"));
    }
    return written(pdf);
}

/// By the names of the fields; of those that say something.
inline Values values_of(const output::FilledForm& form) {
    Values values;
    for (const output::FilledField& field : form.fields)
        if (!field.value.empty()) values[field.name] = field.value;
    return values;
}

/// What the sheets do not say, by the names of the questions; Enter for all else.
inline const Values rest{{"material", "mdf"}, {"thickness", "3/8 in"}, {"blade", "10 in"}, {"kerf", "0.118"}};

struct Started {
    cli::Status status = cli::Status::errors;
    std::string out;
    std::string err;
    std::vector<std::string> asked;  ///< prompts that a person answered
};

inline Started start_from(const std::vector<fs::path>& sheets, const fs::path& job, const Values& answers = rest,
                          const std::string& language = {}) {
    std::ostringstream out, err;
    cli::Console console(out, err, false);
    cli::StartChoice choice;
    for (const fs::path& sheet : sheets) choice.from.push_back(sheet.string());
    choice.file = job.string();
    choice.language = language;
    Started started;
    std::vector<std::string> before;
    const cli::NextLine next = [&](const std::string& prompt) -> std::optional<std::string> {
        // What is asked twice has no answer here.
        if (!started.asked.empty() && started.asked.back() == prompt) return {};
        started.asked.push_back(prompt);
        for (const auto& [name, value] : answers)
            for (const char* behind : {": ", " ["})
                if (prompt.starts_with(kit(language.empty() ? "en" : language).words("start.ask_" + name) + behind))
                    return value;
        return "";
    };
    started.status = cli::start(choice, next, console, KERFPACKET_BUILD_DIR);
    started.out = out.str();
    started.err = err.str();
    return started;
}

inline job::Job job_of(const fs::path& file) {
    const job::Reading reading = job::read_job({file.string(), slurp(file)});
    if (!reading.complete) throw std::runtime_error(reading.diagnostics.front().message + slurp(file));
    return reading.job;
}

}  // namespace kerfpacket::tests
