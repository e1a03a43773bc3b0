#include "job/media.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <utility>

#include "measure/fraction.h"

namespace kerfpacket::job {
namespace {

using namespace measure::literals;
using measure::Length;

struct Size {
    std::string_view text;  ///< as the name gives it: "8.5x11in"
    Length width;
    Length height;
};

std::optional<double> number(std::string_view text) {
    double value = 0;
    const auto [end, failed] = std::from_chars(text.data(), text.data() + text.size(), value, std::chars_format::fixed);
    // "inf" and "nan" are numbers to from_chars.
    if (failed != std::errc{} || end != text.data() + text.size() || !std::isfinite(value)) return std::nullopt;
    return value;
}

/// "24in" or "62mm" without its unit, and what one of that unit is.
std::optional<std::pair<std::string_view, Length>> in_unit(std::string_view text) {
    if (text.ends_with("in")) return std::pair{text.substr(0, text.size() - 2), 1_in};
    if (text.ends_with("mm")) return std::pair{text.substr(0, text.size() - 2), 1_mm};
    return std::nullopt;
}

std::string_view unit_name(std::string_view text) { return text.substr(text.size() - 2); }

std::optional<Size> size_of(std::string_view text) {
    const auto figures = in_unit(text);
    if (!figures) return std::nullopt;
    const std::size_t by = figures->first.find('x');
    if (by == std::string_view::npos) return std::nullopt;
    const auto a = number(figures->first.substr(0, by));
    const auto b = number(figures->first.substr(by + 1));
    if (!a || !b) return std::nullopt;
    return Size{text, figures->second * std::min(*a, *b), figures->second * std::max(*a, *b)};
}

/// "8-1/2 x 11 in" for "8.5x11in"; decimals where no sixteenth says it.
std::string plain_size(std::string_view text) {
    const std::string_view unit = unit_name(text);
    std::string plain;
    for (std::string_view rest = text.substr(0, text.size() - 2);;) {
        const std::size_t by = rest.find('x');
        const std::string_view figure = rest.substr(0, by);
        const Length side = Length::inches(number(figure).value_or(0));
        const bool sixteenths = unit == "in" && measure::is_inch_fraction(side, 16);
        plain += sixteenths ? measure::inch_fraction(side) : std::string(figure);
        if (by == std::string_view::npos) return plain + " " + std::string(unit);
        plain += " x ";
        rest.remove_prefix(by + 1);
    }
}

/// A sheet by its PWG name, "na_letter_8.5x11in", and what people call it.
Media sheet(std::string_view name, std::string_view called) {
    const auto size = size_of(name.substr(name.rfind('_') + 1)).value();
    return {std::string(name), std::string(called) + " " + plain_size(size.text), size.width, size.height};
}

std::optional<Media> roll(std::string_view name, std::string_view width) {
    const auto figure = in_unit(width);
    const auto value = figure ? number(figure->first) : std::nullopt;
    if (!value) return std::nullopt;
    const Length across = figure->second * *value;
    if (across < least_roll || across > widest_roll) return std::nullopt;
    return Media{std::string(name), "Roll " + plain_size(width) + " wide", across, longest_page, true};
}

std::optional<Media> custom(std::string_view name) {
    const std::size_t last = name.rfind('_');
    const auto size = size_of(name.substr(last + 1));
    if (!size || last < 8 || size->width < least_sheet_width || size->height < least_sheet_height ||
        size->width > widest_roll || size->height > longest_page)
        return std::nullopt;
    return Media{std::string(name), "Custom " + plain_size(size->text), size->width, size->height};
}

}  // namespace

// Names and sizes: PWG 5101.1, Media Standardized Names, from memory; the A and B series also ISO 216.
const std::vector<Media>& all_media() {
    static const std::vector<Media> sheets = {
        sheet("na_letter_8.5x11in", "Letter"),
        sheet("na_legal_8.5x14in", "Legal"),
        sheet("na_ledger_11x17in", "Ledger"),
        sheet("na_super-b_13x19in", "Super B"),
        sheet("na_c_17x22in", "ANSI C"),
        sheet("na_d_22x34in", "ANSI D"),
        sheet("na_e_34x44in", "ANSI E"),
        sheet("na_arch-a_9x12in", "Arch A"),
        sheet("na_arch-b_12x18in", "Arch B"),
        sheet("na_arch-c_18x24in", "Arch C"),
        sheet("na_arch-d_24x36in", "Arch D"),
        sheet("na_arch-e_36x48in", "Arch E"),
        sheet("na_govt-letter_8x10in", "Government letter"),
        sheet("na_govt-legal_8x13in", "Government legal"),
        sheet("na_foolscap_8.5x13in", "Foolscap"),
        sheet("na_10x14_10x14in", "10 x 14"),
        sheet("iso_a4_210x297mm", "A4"),
        sheet("iso_a3_297x420mm", "A3"),
        sheet("iso_a2_420x594mm", "A2"),
        sheet("iso_a1_594x841mm", "A1"),
        sheet("iso_a0_841x1189mm", "A0"),
        sheet("iso_b4_250x353mm", "B4"),
        sheet("iso_b3_353x500mm", "B3"),
        sheet("iso_b2_500x707mm", "B2"),
        sheet("iso_b1_707x1000mm", "B1"),
        sheet("iso_sra3_320x450mm", "SRA3"),
    };
    return sheets;
}

std::optional<Media> find_media(std::string_view name) {
    const auto& sheets = all_media();
    const auto found = std::find_if(sheets.begin(), sheets.end(), [&](const Media& m) { return m.name == name; });
    if (found != sheets.end()) return *found;
    constexpr std::string_view roll_start = "custom_roll_";
    if (name.starts_with(roll_start) && name.find('x') == std::string_view::npos)
        return roll(name, name.substr(roll_start.size()));
    return name.starts_with("custom_") ? custom(name) : std::nullopt;
}

std::string custom_media_hint() {
    return "other sheets are named like custom_mine_8x20in, from 8 x 10 in, rolls like "
           "custom_roll_62mm or custom_roll_24in, 25 mm to 44 in wide";
}

}  // namespace kerfpacket::job
