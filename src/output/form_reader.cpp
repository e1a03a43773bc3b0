#include "output/form_reader.h"

#include <new>
#include <stdexcept>

#include <fmt/format.h>

#include "disk/child.h"
#include "disk/near_name.h"
#include "disk/read.h"
#include "output/form_fields.h"

namespace kerfpacket::output {
namespace {

namespace fs = std::filesystem;

constexpr const char* damaged = "is damaged: it was cut short or changed, so that it is no whole PDF";

/// Some viewers and mail programs put something before the beginning (ISO 32000-1, annex H, note 13).
bool begins_as_pdf(const std::string& bytes) { return bytes.substr(0, 1024).find("%PDF-") != std::string::npos; }

FilledForm form_of(QPDF& pdf) {
    FormFields fields(pdf);
    return {fields.take(), fields.drawn_over()};
}

}  // namespace

std::string load_form(const fs::path& file) {
    auto bytes = disk::read(file, most_form_bytes);
    if (bytes) return *std::move(bytes);
    using Kind = disk::Unread::Kind;
    const std::string name = file.string();
    const std::string near = disk::near_name(file, ".pdf");
    switch (bytes.error().kind) {
        case Kind::absent:
            throw disk::Failure(name + ": there is no such file" +
                                (near.empty() ? "" : fmt::format("; did you mean {}?", near)));
        case Kind::folder:
        case Kind::special: throw disk::Failure(name + " is not a file; expected a filled field sheet");
        case Kind::too_large:
            throw TooLarge(fmt::format("{} is over {} MB; no field sheet is", name, most_form_bytes >> 20U));
        case Kind::failed: break;
    }
    throw disk::Failure(fmt::format("cannot read {}: {}", name, bytes.error().why));
}

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
        FilledForm form;
        try {
            form = parse_form(bytes);
        } catch (const Refusal& refused) { return "r" + std::string(refused.what()); }
        std::string answer{form.drawn_over ? 'd' : '-'};
        for (const FilledField& one : form.fields)
            answer += disk::packed(one.name) + disk::packed(one.tip) + disk::packed(one.value);
        return answer;
    };
    const disk::Limits limits{512U << 20U, 10, most_form_bytes};
    const std::string answer =
        disk::in_child(work, limits, file.string(),
                       file.string() + " is no field sheet: reading it takes more memory or time than any");
    if (answer.starts_with('r')) throw Refusal(answer.substr(1));
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
