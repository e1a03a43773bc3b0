// [printer]: its papers, and what is known of it.
#include <algorithm>

#include "job/read_profile.h"
#include "job/tables.h"
#include "job/text.h"

namespace kerfpacket::job {
namespace {

using namespace measure::literals;

/// All sheets keep 1/4 in free at the edges of the paper; where the printer needs more, they keep more.
const LengthKey margin{"margin", Length(), most_margin, R"("1/4 in")", true};

void read_papers(Context& context, TableReader& reader, Printer& printer) {
    if (auto media = read_media(context, reader, "media", Need::optional)) {
        if (media->value.roll)
            context.error(media->at, "media must be a cut sheet: cards are not printed on a roll",
                          "name the roll as strip_media or template_media");
        else printer.media = std::move(media->value);
    }
    if (auto media = read_media(context, reader, "strip_media", Need::optional))
        printer.strips = std::move(media->value);
    auto templates = read_media(context, reader, "template_media", Need::optional);
    if (!templates) return;
    if (templates->value.roll && templates->value.width < narrowest_template_roll)
        context.error(templates->at,
                      "a roll " + context.shown(templates->value.width) + " wide is too narrow for templates",
                      "expected a roll at least " + context.shown(narrowest_template_roll) + " wide, or sheets");
    else printer.templates = std::move(templates->value);
}

void read_profile_name(Context& context, TableReader& reader, std::string_view key,
                       std::optional<NamedProfile>& profile) {
    const auto name = reader.words(key, 40, R"("shop-laser")", Need::optional);
    if (!name) return;
    if (is_profile_name(name->value)) profile = NamedProfile{*name, std::nullopt};
    else
        context.error(name->at, std::string(key) + " " + in_quotes(name->value) + " is not written as a profile is",
                      R"(expected letters, digits and hyphens, for example "shop-laser")");
}

}  // namespace

std::optional<Sourced<Media>> read_media(Context& context, TableReader& reader, std::string_view key, Need need) {
    const auto* node = reader.find(key, need, R"("na_letter_8.5x11in")", {Takes::Kind::paper});
    if (node == nullptr) return std::nullopt;
    const std::string name(key);
    const auto* words = node->as_string();
    if (words == nullptr) {
        context.error(position(*node), name + " must be a name in quotes", for_example(key, R"("na_letter_8.5x11in")"));
        return std::nullopt;
    }
    if (auto media = find_media(words->get())) return Sourced<Media>{*std::move(media), position(*node)};
    context.error(position(*node), "unknown " + name + " " + in_quotes(words->get()), media_hint(words->get()));
    return std::nullopt;
}

bool is_profile_name(std::string_view name) {
    const auto fits = [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-';
    };
    return !name.empty() && name.size() <= 40 && std::all_of(name.begin(), name.end(), fits);
}

Printer default_printer() {
    Printer printer;
    printer.media = all_media().front();
    printer.margin = 0.25_in;
    return printer;
}

Printer read_printer(Context& context, const toml::table& table, const Printer& otherwise, Beside& beside) {
    TableReader reader(context, table, "[printer]");
    Printer printer = otherwise;
    read_papers(context, reader, printer);
    printer.adhesive = reader.flag("adhesive", printer.adhesive);
    printer.margin = reader.length_or(margin, printer.margin).value;
    read_profile_name(context, reader, "profile", printer.profile);
    read_profile_name(context, reader, "strip_profile", printer.strip_profile);
    read_profile_name(context, reader, "template_profile", printer.template_profile);
    if (const auto* labels = reader.table("labels", Need::optional, "[printer.labels]"))
        beside.labels = read_labels(context, *labels);
    reader.finish();
    return printer;
}

}  // namespace kerfpacket::job
