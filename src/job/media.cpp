#include "job/media.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <utility>

#include "job/diagnostics.h"
#include "measure/fraction.h"

namespace kerfpacket::job {
namespace {

using namespace measure::literals;
using measure::Length;
using measure::Unit;

/// Under this the cards have no room for their lines. Judged by laying out packets; no source.
constexpr Length least_width = 8.25_in;
constexpr Length least_height = 10.75_in;
/// The longest page of a PDF: ISO 32000-1, annex C.2.
constexpr Length longest_side = 200_in;
constexpr Length least_roll = 25_mm;
constexpr Length widest_roll = 44_in;

constexpr std::string_view custom = "custom_";

/// Names in PWG 5101.1, Media Standardized Names, from memory; sizes are those in the names. A4, A3 and the like: also
/// ISO 216. Sheets on which the cards find no room are left out.
constexpr std::array<std::pair<std::string_view, std::string_view>, 40> names = {{
    {"na_letter_8.5x11in", "Letter"},
    {"na_legal_8.5x14in", "Legal"},
    {"na_ledger_11x17in", "Ledger"},
    {"na_quarto_8.5x10.83in", "Quarto"},
    {"na_fanfold-eur_8.5x12in", "European fanfold"},
    {"na_letter-plus_8.5x12.69in", "Letter plus"},
    {"na_foolscap_8.5x13in", "Foolscap"},
    {"na_oficio_8.5x13.4in", "Oficio"},
    {"na_super-a_8.94x14in", "Super A"},
    {"na_10x14_10x14in", "10 x 14"},
    {"na_11x14_11x14in", "11 x 14"},
    {"na_11x15_11x15in", "11 x 15"},
    {"na_12x19_12x19in", "12 x 19"},
    {"na_super-b_13x19in", "Super B"},
    {"na_arch-a_9x12in", "Architectural A"},
    {"na_arch-b_12x18in", "Architectural B"},
    {"na_arch-c_18x24in", "Architectural C"},
    {"na_arch-d_24x36in", "Architectural D"},
    {"na_arch-e_36x48in", "Architectural E"},
    {"na_arch-e2_26x38in", "Architectural E2"},
    {"na_arch-e3_27x39in", "Architectural E3"},
    {"na_c_17x22in", "Engineering C"},
    {"na_d_22x34in", "Engineering D"},
    {"na_e_34x44in", "Engineering E"},
    {"na_f_44x68in", "Engineering F"},
    {"na_wide-format_30x42in", "Wide format"},
    {"iso_a4_210x297mm", "A4"},
    {"iso_a3_297x420mm", "A3"},
    {"iso_a2_420x594mm", "A2"},
    {"iso_a1_594x841mm", "A1"},
    {"iso_a0_841x1189mm", "A0"},
    {"iso_ra4_215x305mm", "RA4"},
    {"iso_sra4_225x320mm", "SRA4"},
    {"iso_ra3_305x430mm", "RA3"},
    {"iso_sra3_320x450mm", "SRA3"},
    {"iso_b4_250x353mm", "B4"},
    {"iso_b3_353x500mm", "B3"},
    {"iso_b2_500x707mm", "B2"},
    {"iso_b1_707x1000mm", "B1"},
    {"iso_b0_1000x1414mm", "B0"},
}};

/// The last part of a self-describing name: "8.5x11in", or "24in" of a roll.
struct Size {
    Length width;
    Length height;  ///< 0 of a roll
    std::string width_words, height_words;
    Unit unit = Unit::inch;
};

/// Plain digits with at most one point between them, and more than 0.
std::optional<double> number(std::string_view words) {
    if (words.empty() || words.size() > 9 || words.find_first_not_of("0123456789.") != std::string_view::npos)
        return {};
    double value = 0;
    const auto [end, failed] = std::from_chars(words.data(), words.data() + words.size(), value);
    const bool whole = failed == std::errc{} && end == words.data() + words.size();
    if (!whole || words.front() == '.' || words.back() == '.' || value <= 0) return {};
    return value;
}

std::optional<Size> read_size(std::string_view words) {
    Size size;
    if (words.ends_with("mm")) size.unit = Unit::millimetre;
    else if (!words.ends_with("in")) return {};
    words.remove_suffix(2);
    const auto length = [&](double value) {
        return size.unit == Unit::inch ? Length::inches(value) : Length::mm(value);
    };
    const std::size_t cross = words.find('x');
    const auto width = number(words.substr(0, cross));
    if (!width) return {};
    size.width = length(*width);
    size.width_words = words.substr(0, cross);
    if (cross == std::string_view::npos) return size;
    const auto height = number(words.substr(cross + 1));
    if (!height) return {};
    size.height = length(*height);
    size.height_words = words.substr(cross + 1);
    if (size.width > size.height) {
        std::swap(size.width, size.height);
        std::swap(size.width_words, size.height_words);
    }
    return size;
}

/// Without its unit: "8-1/2", "62".
std::string spoken(Length value, const std::string& words, Unit unit) {
    return unit == Unit::inch && measure::is_inch_fraction(value, 64) ? measure::inch_text(value) : words;
}

std::string unit_word(Unit unit) { return unit == Unit::inch ? " in" : " mm"; }

Media sheet(std::string name, std::string_view title, const Size& size) {
    std::string figures =
        spoken(size.width, size.width_words, size.unit) + " x " + spoken(size.height, size.height_words, size.unit);
    std::string plain = std::string(title) + " " + figures + unit_word(size.unit);
    return {std::move(name), std::move(plain), size.width, size.height, false, std::move(figures), size.unit};
}

/// The parts of a custom name behind "custom_": "card" and "8x20in".
std::optional<std::pair<std::string_view, Size>> custom_parts(std::string_view name) {
    if (!name.starts_with(custom)) return {};
    name.remove_prefix(custom.size());
    const std::size_t line = name.rfind('_');
    if (line == std::string_view::npos || line == 0) return {};
    const std::string_view title = name.substr(0, line);
    // PWG 5101.1: small letters, digits, hyphens and points.
    const bool fits = title.size() <= 40 &&
                      title.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789-.") == std::string_view::npos;
    const auto size = read_size(name.substr(line + 1));
    if (!fits || !size || (size->height == Length() && title != "roll")) return {};
    return std::pair(title, *size);
}

bool prints(const Size& size) {
    if (size.height == Length()) return size.width >= least_roll && size.width <= widest_roll;
    return size.width >= least_width && size.height >= least_height && size.height <= longest_side;
}

}  // namespace

const std::vector<Media>& all_media() {
    static const std::vector<Media> sheets = [] {
        std::vector<Media> list;
        list.reserve(names.size());
        for (const auto& [name, title] : names)
            list.push_back(sheet(std::string(name), title, *read_size(name.substr(name.rfind('_') + 1))));
        return list;
    }();
    return sheets;
}

std::optional<Media> find_media(std::string_view name) {
    const auto& sheets = all_media();
    const auto found = std::find_if(sheets.begin(), sheets.end(), [&](const Media& m) { return m.name == name; });
    if (found != sheets.end()) return *found;
    const auto parts = custom_parts(name);
    if (!parts || !prints(parts->second)) return {};
    const auto& [title, size] = *parts;
    const std::string unit = size.unit == Unit::inch ? "in" : "mm";
    const std::string upright = std::string(custom) + std::string(title) + "_" + size.width_words;
    if (size.height != Length()) return sheet(upright + "x" + size.height_words + unit, "Custom", size);
    const std::string figures = spoken(size.width, size.width_words, size.unit);
    return Media{
        upright + unit, "Roll " + figures + unit_word(size.unit) + " wide", size.width, longest_side, true, figures,
        size.unit};
}

namespace {

/// "letter", "A4", "11x17", "8.5 x 11 in": what people call a paper, in place of its full name.
const Media* called(std::string_view name) {
    std::string plain;
    for (const char c : name)
        if (c != ' ') plain += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    if (plain == "tabloid") plain = "ledger";
    const auto turned = [](std::string_view size) {
        const std::size_t cross = size.find('x');
        return cross == std::string_view::npos
                   ? std::string(size)
                   : std::string(size.substr(cross + 1)) + "x" + std::string(size.substr(0, cross));
    };
    for (const Media& one : all_media()) {
        const std::size_t first = one.name.find('_'), last = one.name.rfind('_');
        const std::string title = one.name.substr(first + 1, last - first - 1), size = one.name.substr(last + 1);
        const std::string bare = size.substr(0, size.size() - 2);
        for (const std::string& said : {title, size, bare, turned(bare), title + bare, title + size})
            if (plain == said) return &one;
    }
    return nullptr;
}

}  // namespace

std::string media_hint(std::string_view name) {
    if (const Media* meant = called(name)) return "did you mean \"" + meant->name + "\"?";
    const auto help = custom_media_help();
    if (const auto parts = custom_parts(name)) return parts->second.height == Length() ? help.back() : help.front();
    if (name.starts_with("custom_roll")) return help.back();
    if (name.starts_with("custom")) return help.front();
    std::vector<std::string_view> known;
    for (const Media& one : all_media()) known.push_back(one.name);
    const std::string near = near_miss(name, known);
    return near.empty() ? R"("kerfpacket media" lists what is known)" : "did you mean \"" + near + "\"?";
}

std::vector<std::string> custom_media_help() {
    return {
        "a sheet of another size is named custom_NAME_WxHin or custom_NAME_WxHmm, as custom_card_8.5x20in: from "
        "8-1/4 x 10-3/4 in (210 x 274 mm) to 200 in",
        "a roll is named by its width, as custom_roll_24in or custom_roll_62mm: from 25 mm to 44 in (1117.6 mm)"};
}

}  // namespace kerfpacket::job
