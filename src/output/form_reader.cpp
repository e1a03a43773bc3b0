#include "output/form_reader.h"

#include <new>
#include <stdexcept>

#include "disk/child.h"
#include "output/form_fields.h"

namespace kerfpacket::output {
namespace {

namespace fs = std::filesystem;

constexpr ForeignKind field_sheet{"field sheet", "a filled field sheet", most_form_bytes};

/// Some viewers and mail programs put something before the beginning (ISO 32000-1, annex H, note 13).
bool begins_as_pdf(const std::string& bytes) { return bytes.substr(0, 1024).find("%PDF-") != std::string::npos; }

FilledForm form_of(QPDF& pdf) {
    FormFields fields(pdf);
    return {fields.take(), fields.drawn_over()};
}

}  // namespace

std::string load_form(const fs::path& file) { return load_foreign(file, field_sheet); }

FilledForm parse_form(const std::string& bytes) {
    if (!begins_as_pdf(bytes)) throw Refusal("is no PDF");
    try {
        QPDF pdf;
        pdf.setSuppressWarnings(true);
        // Viewers on phones write poor updates: what can be mended is read.
        pdf.processMemoryFile("the form", bytes.data(), bytes.size());
        return form_of(pdf);
    } catch (const Refusal&) { throw; } catch (const std::bad_alloc&) {
        throw;
    } catch (const QPDFExc& error) {
        throw Refusal(error.getErrorCode() == qpdf_e_password
                          ? "is locked with a password: save it without one, and send that file"
                          : damaged);
    } catch (const std::exception&) { throw Refusal(damaged); }
}

FilledForm read_form(const std::string& bytes, const fs::path& file) {
    const auto work = [&] {
        const FilledForm form = parse_form(bytes);
        std::string answer{form.drawn_over ? 'd' : '-'};
        for (const FilledField& one : form.fields)
            answer += disk::packed(one.name) + disk::packed(one.tip) + disk::packed(one.value);
        return answer;
    };
    const std::string answer =
        read_in_bounds(work, field_sheet, file, "is no field sheet: reading it takes more memory or time than any");
    FilledForm form;
    form.drawn_over = answer.at(0) == 'd';
    for (std::string_view rest = std::string_view(answer).substr(1); !rest.empty();) {
        FilledField field;
        for (std::string* part : {&field.name, &field.tip, &field.value}) *part = disk::unpacked(rest);
        form.fields.push_back(std::move(field));
    }
    return form;
}

}  // namespace kerfpacket::output
