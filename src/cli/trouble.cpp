#include "cli/trouble.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <stdexcept>
#include <string_view>

#include "fonts/utf8.h"
#include "job/media.h"
#include "job/printed.h"
#include "job/text.h"

namespace kerfpacket::cli {
namespace {

std::string utf8(char32_t c) {
    const auto byte = [](char32_t bits) { return static_cast<char>(static_cast<unsigned char>(bits)); };
    const auto tail = [&](int shift) { return byte(0x80U | ((static_cast<unsigned>(c) >> shift) & 0x3FU)); };
    if (c < 0x80) return {byte(c)};
    if (c < 0x800) return {byte(0xC0U | (c >> 6U)), tail(0)};
    if (c < 0x10000) return {byte(0xE0U | (c >> 12U)), tail(6), tail(0)};
    return {byte(0xF0U | (c >> 18U)), tail(12), tail(6), tail(0)};
}

void use_half_templates(job::Job& job) {
    for (job::Opening& opening : job.openings) opening.wish.half = true;
}

void use_language(job::Job& job, const std::string& language) {
    job::Header& header = job.header;
    // Both languages of a job stay when the second is made the first.
    if (header.also_in == language) header.also_in = header.language;
    header.language = language;
}

}  // namespace

bool has_error(const job::Diagnostics& diagnostics) {
    return std::any_of(diagnostics.begin(), diagnostics.end(),
                       [](const job::Diagnostic& one) { return one.severity == job::Severity::error; });
}

job::Diagnostics unprintable(const fonts::MissingCharacter& missing, const fonts::Faces& faces,
                             const job::Source& source) {
    const auto told = [](char32_t character, job::Position at, const std::string& words) {
        return job::Diagnostic{
            job::Severity::error, at,
            job::Told(fmt::format("the character {} (U+{:04X}) cannot be printed: no font of the packet has it",
                                  utf8(character), static_cast<unsigned>(character))),
            job::Told(fmt::format("write {} another way", job::in_quotes(words)))};
    };
    job::Diagnostics all;
    for (const job::PrintedWords& words : job::printed_words(source)) {
        int column = words.at.column;
        for (std::string_view rest = words.words; !rest.empty();) {
            const std::optional<char32_t> character = fonts::take_character(rest);
            if (!character) break;
            ++column;
            // All faces have the same characters.
            if (!faces.covers(page::Face::regular, *character))
                all.push_back(
                    told(*character, {words.at.line, words.verbatim ? column : words.at.column}, words.words));
        }
    }
    if (all.empty()) all.push_back(told(missing.character(), {}, missing.text()));
    return all;
}

job::Media known_media(const std::string& name) {
    std::optional<job::Media> media = job::find_media(name);
    if (!media)
        throw std::runtime_error(fmt::format("--media {}: no such paper is known; {}", name, job::media_hint(name)));
    return *std::move(media);
}

measure::Unit units_of(const std::string& units, const job::Media& media) {
    if (units.empty()) return media.unit;
    return units == "mm" ? measure::Unit::millimetre : measure::Unit::inch;
}

void use_media(job::Job& job, const std::string& name) {
    const job::Media media = known_media(name);
    job::Printer& printer = job.printer;
    if (media.roll) {
        printer.strips = media;
        if (media.width >= job::narrowest_template_roll) printer.templates = media;
    } else {
        printer.media = media;
        printer.strips.reset();
        printer.templates.reset();
    }
    job.fingerprint = job::fingerprint(job);
}

job::Reading read_as_printed(const job::Source& source, const job::Shop& shop, const PrintChoice& print) {
    job::Reading reading = job::read_job(source, shop);
    if (!reading.complete) return reading;
    if (!print.media.empty()) use_media(reading.job, print.media);
    if (print.half) use_half_templates(reading.job);
    if (!print.language.empty()) use_language(reading.job, print.language);
    reading.job.fingerprint = job::fingerprint(reading.job);
    return reading;
}

std::string as_typed(const std::string& word) {
    const std::string_view plain = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789_-+./,:@%=";
    if (!word.empty() && word.find_first_not_of(plain) == std::string::npos) return word;
    std::string quoted = "'";
    for (const char c : word) quoted += c == '\'' ? std::string("'\\''") : std::string(1, c);
    return quoted + "'";
}

std::string counted(std::size_t number, const std::string& noun) {
    return fmt::format("{} {}{}", number, noun, number == 1 ? "" : "s");
}

}  // namespace kerfpacket::cli
