#include "cli/record.h"

#include <algorithm>
#include <cstdint>
#include <set>
#include <stdexcept>
#include <string_view>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "job/read.h"
#include "job/read_profile.h"
#include "job/text.h"

namespace kerfpacket::cli {
namespace {

using Json = nlohmann::ordered_json;

constexpr int schema = 1;
constexpr std::string_view statement_file = "packet.json";
constexpr std::string_view of_previous = "previous.";

Json json_of(const PrintChoice& print) {
    return {{"media", print.media}, {"half", print.half}, {"language", print.language}};
}

Json json_of(const PartChoice& part) {
    Json json = {{"only", part.only}, {"pages", part.pages}};
    if (part.from_cut) json["from_cut"] = *part.from_cut;
    if (part.strip) json["strip"] = *part.strip;
    return json;
}

std::string statement_text(const Record& record, const Statement& statement) {
    Json json = {
        {"schema", schema},         {"version", statement.version},         {"number", statement.number},
        {"title", statement.title}, {"revision", statement.revision},       {"fingerprint", statement.fingerprint},
        {"pages", statement.pages}, {"print", json_of(record.inputs.print)}};
    if (!record.part.whole()) json["part"] = json_of(record.part);
    if (record.previous) json["previous_print"] = json_of(record.previous->print);
    return json.dump(2) + "\n";
}

void attach(std::vector<output::Attachment>& to, const Inputs& inputs, const std::string& prefix) {
    const std::string whose = prefix.empty() ? "" : " of the revision before";
    const auto data = [&](const std::string& name, const std::string& text, const std::string& what) {
        to.push_back({prefix + name, text, what + whose, "Data"});
    };
    to.push_back({prefix + "job.toml", inputs.job.text, "The job file" + whose, prefix.empty() ? "Source" : "Data"});
    if (inputs.shop) data("shop.toml", inputs.shop->text, "The shop file");
    for (const ProfileText& profile : inputs.profiles)
        if (profile.source)
            data("printers." + profile.name + ".toml", profile.source->text, "A printer as it was measured");
    for (const fonts::WordFile& words : inputs.words) {
        std::string name = "words." + words.name;
        std::replace(name.begin(), name.end(), '/', '.');
        data(name, words.text, "The shop's own words");
    }
}

[[noreturn]] void refuse(const std::string& why) { throw output::Refusal("is no packet: " + why); }

/// Strings of a packet that are shown or compared: nothing that moves a terminal's cursor.
std::string plain(const Json& json, const char* key) {
    auto text = json.at(key).get<std::string>();
    if (job::printable(text) != text) refuse(fmt::format("{} of {} is no line of text", key, statement_file));
    return text;
}

/// A number of pages, cuts or strips.
int number(const Json& json, const char* key) {
    constexpr int most = 1'000'000;
    const Json& value = json.at(key);
    if (!value.is_number_unsigned() || value.get<std::uint64_t>() > most)
        refuse(fmt::format("{} cannot be read", statement_file));
    return value.get<int>();
}

PrintChoice print_of(const Json& json) {
    PrintChoice print{plain(json, "media"), json.at("half").get<bool>(), plain(json, "language")};
    const auto& known = job::languages;
    if (!print.language.empty() && std::find(known.begin(), known.end(), print.language) == known.end())
        refuse(fmt::format("the language in {} is not known", statement_file));
    return print;
}

PartChoice part_of(const Json& json) {
    PartChoice part;
    for (const Json& sheet : json.at("only")) part.only.push_back(plain({{"only", sheet}}, "only"));
    part.pages = plain(json, "pages");
    if (json.contains("from_cut")) part.from_cut = number(json, "from_cut");
    if (json.contains("strip")) part.strip = number(json, "strip");
    return part;
}

/// The statement, and of the record all that is no file.
Filed stated(const std::string& text, const std::string& packet) {
    try {
        const Json json = Json::parse(text);
        if (number(json, "schema") != schema)
            throw std::runtime_error(packet + " was written by a later version of kerfpacket, which alone can read it");
        Filed filed;
        filed.statement = {plain(json, "version"),     plain(json, "number"),
                           plain(json, "title"),       plain(json, "revision"),
                           plain(json, "fingerprint"), static_cast<std::size_t>(number(json, "pages"))};
        filed.record.inputs.print = print_of(json.at("print"));
        if (json.contains("part")) filed.record.part = part_of(json.at("part"));
        if (json.contains("previous_print")) {
            filed.record.previous.emplace();
            filed.record.previous->print = print_of(json.at("previous_print"));
        }
        return filed;
    } catch (const Json::exception&) { refuse(fmt::format("{} cannot be read", statement_file)); }
}

/// "words.en.cover.toml": of which language, and which file of it.
std::optional<fonts::WordFile> word_file(std::string_view name, const std::string& text, const std::string& place) {
    for (const std::string_view language : job::languages) {
        const std::string front = fmt::format("words.{}.", language);
        if (!name.starts_with(front) || name.find_first_of("/\\") != std::string_view::npos) continue;
        return fonts::WordFile{fmt::format("{}/{}", language, name.substr(front.size())), text, place};
    }
    return std::nullopt;
}

/// The name in "printers.NAME.toml"; empty for any other file.
std::string profile_name(std::string_view name) {
    constexpr std::string_view front = "printers.", back = ".toml";
    if (!name.starts_with(front) || !name.ends_with(back) || name.size() < front.size() + back.size()) return "";
    name.remove_prefix(front.size());
    name.remove_suffix(back.size());
    return job::is_profile_name(name) ? std::string(name) : "";
}

/// Puts one file of a packet where it belongs; false for one that has no place.
bool place(Inputs& inputs, std::string_view name, const std::string& text, const std::string& shown) {
    const auto source = [&](const job::FileKind& kind) {
        auto checked = job::checked(shown, text, kind);
        if (!checked) refuse(fmt::format("its file {}: {}", name, checked.error().message));
        return *std::move(checked);
    };
    if (name == "job.toml") inputs.job = source(job::job_file);
    else if (name == "shop.toml") inputs.shop = source(job::shop_file);
    else if (std::string printer = profile_name(name); !printer.empty())
        inputs.profiles.push_back({std::move(printer), source(job::profile_file)});
    else if (auto words = word_file(name, text, shown)) inputs.words.push_back(*std::move(words));
    else return false;
    return true;
}

}  // namespace

Statement statement_of(const plan::Plan& plan, std::size_t pages) {
    const job::Header& header = plan.header;
    return {KERFPACKET_VERSION, header.number, header.title, header.revision, plan.fingerprint, pages};
}

std::vector<output::Attachment> attachments_of(const Record& record, const Statement& statement) {
    std::vector<output::Attachment> all;
    attach(all, record.inputs, "");
    if (record.previous) attach(all, *record.previous, std::string(of_previous));
    all.push_back({std::string(statement_file), statement_text(record, statement), "How this packet was made", "Data"});
    return all;
}

Filed filed(const std::vector<output::EmbeddedFile>& files, const std::string& packet) {
    const auto statement =
        std::find_if(files.begin(), files.end(), [](const auto& file) { return file.name == statement_file; });
    if (statement == files.end()) refuse("it does not carry what kerfpacket puts into every packet");
    Filed all = stated(statement->text, packet);
    std::set<std::string_view> seen;
    for (const output::EmbeddedFile& file : files) {
        std::string_view name = file.name;
        if (job::first_bad_utf8(name)) refuse("the name of a file in it is no text");
        if (!seen.insert(name).second) refuse("two files in it have one name");
        if (name == statement_file) continue;
        const bool before = name.starts_with(of_previous) && all.record.previous;
        if (before) name.remove_prefix(of_previous.size());
        Inputs& inputs = before ? *all.record.previous : all.record.inputs;
        if (!place(inputs, name, file.text, fmt::format("{}, {}", packet, job::printable(file.name))))
            refuse(fmt::format("it holds a file that has no place in one: {}", job::in_quotes(file.name)));
    }
    if (all.record.inputs.job.text.empty() || (all.record.previous && all.record.previous->job.text.empty()))
        refuse("its job file is missing");
    return all;
}

}  // namespace kerfpacket::cli
