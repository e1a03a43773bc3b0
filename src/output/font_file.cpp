#include "output/font_file.h"

#include <algorithm>
#include <new>
#include <set>
#include <stdexcept>
#include <string_view>
#include <vector>

#include <fmt/format.h>
#include FT_TRUETYPE_TABLES_H

namespace kerfpacket::output {
namespace {

[[noreturn]] void damaged() { throw std::runtime_error("a font file is damaged: build the program again"); }

/// Numbers of a TrueType file are big-endian (ISO/IEC 14496-22).
unsigned read(std::string_view from, std::size_t at, unsigned bytes) {
    if (at + bytes > from.size()) damaged();
    unsigned value = 0;
    for (unsigned i = 0; i < bytes; ++i) value = value << 8U | static_cast<unsigned char>(from[at + i]);
    return value;
}

void write(std::string& to, std::size_t at, unsigned value, unsigned bytes) {
    for (unsigned i = 0; i < bytes; ++i) to.at(at + i) = static_cast<char>(value >> (8 * (bytes - 1 - i)) & 0xFFU);
}

void append(std::string& to, std::size_t value, unsigned bytes) {
    to.resize(to.size() + bytes);
    write(to, to.size() - bytes, static_cast<unsigned>(value), bytes);
}

constexpr unsigned long_offsets_at = 50, metrics_at = 34, glyphs_at = 4;  // in head, hhea, maxp

/// The outlines of a font and the glyphs that are kept, in their new order.
class Outlines {
public:
    Outlines(std::string glyf, std::string loca, bool long_offsets)
        : glyf_(std::move(glyf)), loca_(std::move(loca)), long_offsets_(long_offsets) {}

    /// The new number of a glyph, which is kept from now on.
    unsigned keep(unsigned glyph) {
        const auto [found, added] = numbers_.try_emplace(glyph, static_cast<unsigned>(kept_.size()));
        if (added) kept_.push_back(glyph);
        return found->second;
    }
    const std::vector<unsigned>& kept() const { return kept_; }

    struct Written {
        std::string glyf;
        std::string loca;
        bool long_offsets = false;
    };
    /// Outlines of all that is kept, with the glyphs that they are put together of, and where each begins: in pairs of
    /// bytes, half as many figures, unless there are more pairs than two bytes count.
    Written written() {
        std::string glyf;
        std::vector<std::size_t> begins;
        for (std::size_t i = 0; i < kept_.size(); ++i) {  // NOLINT(*-loop-convert): grows on the way
            begins.push_back(glyf.size());
            glyf += renumbered(std::string(outline(kept_[i])));
            glyf.resize((glyf.size() + 1) / 2 * 2);
        }
        begins.push_back(glyf.size());
        Written written{std::move(glyf), {}, begins.back() / 2 > 0xFFFF};
        for (const std::size_t begin : begins)
            append(written.loca, written.long_offsets ? begin : begin / 2, written.long_offsets ? 4 : 2);
        return written;
    }

private:
    std::string_view outline(unsigned glyph) const {
        const auto offset = [&](std::size_t n) -> std::size_t {
            return long_offsets_ ? read(loca_, n * 4, 4) : read(loca_, n * 2, 2) * 2;
        };
        const std::size_t from = offset(glyph), to = offset(glyph + 1);
        if (from > to || to > glyf_.size()) damaged();
        return std::string_view(glyf_).substr(from, to - from);
    }

    /// A glyph put together of others names them by number.
    std::string renumbered(std::string outline) {
        constexpr unsigned words = 1, one_scale = 8, more = 0x20, two_scales = 0x40, four = 0x80;
        if (outline.empty() || read(outline, 0, 2) < 0x8000) return outline;
        unsigned flags = more;
        for (std::size_t at = 10; (flags & more) != 0;) {
            flags = read(outline, at, 2);
            write(outline, at + 2, keep(read(outline, at + 2, 2)), 2);
            at += (flags & words) != 0 ? 8 : 6;
            at += (flags & four) != 0 ? 8 : (flags & two_scales) != 0 ? 4 : (flags & one_scale) != 0 ? 2 : 0;
        }
        return outline;
    }

    std::string glyf_, loca_;
    bool long_offsets_;
    std::vector<unsigned> kept_;
    std::map<unsigned, unsigned> numbers_;
};

/// Advance and side bearing of each glyph that is kept.
std::string metrics_of(const std::vector<unsigned>& glyphs, std::string_view hmtx, unsigned with_advance) {
    std::string kept;
    for (const unsigned glyph : glyphs) {
        const std::size_t number = glyph, last = with_advance - 1;
        kept.append(hmtx.substr(4 * std::min(number, last), 2));
        kept.append(hmtx.substr(number <= last ? 4 * number + 2 : 2 * (last + 1 + number), 2));
    }
    return kept;
}

/// One map from byte to glyph, as ISO 19005-1, 6.3.7 wants of a symbolic font: format 0.
std::string map_of(const std::map<unsigned char, unsigned>& glyphs) {
    std::string map;
    for (const unsigned value : {0U, 1U, 1U, 0U}) append(map, value, 2);
    append(map, 12, 4);
    for (const unsigned value : {0U, 262U, 0U}) append(map, value, 2);
    const std::size_t first = map.size();
    map.resize(first + 256);
    for (const auto& [code, glyph] : glyphs) map[first + code] = static_cast<char>(glyph);
    return map;
}

unsigned checksum(std::string_view table) {
    unsigned sum = 0;
    for (std::size_t at = 0; at < table.size(); at += 4) sum += read(table, at, 4);
    return sum;
}

std::string file_of(std::map<std::string, std::string> tables) {
    std::string directory;
    append(directory, 0x00010000, 4);
    unsigned log = 0;
    while (2U << log <= tables.size()) ++log;
    for (const std::size_t value :
         {tables.size(), std::size_t{16} << log, std::size_t{log}, 16 * tables.size() - (std::size_t{16} << log)})
        append(directory, value, 2);
    std::string bodies;
    const std::size_t first = directory.size() + 16 * tables.size();
    for (auto& one : tables) {
        std::string& table = one.second;
        const std::size_t length = table.size();
        table.resize((length + 3) / 4 * 4);
        directory += one.first;
        append(directory, checksum(table), 4);
        append(directory, first + bodies.size(), 4);
        append(directory, length, 4);
        bodies += table;
    }
    return directory + bodies;
}

}  // namespace

FontFile::FontFile(const std::string& bytes) {
    FT_Library library = nullptr;
    if (FT_Init_FreeType(&library) != 0) throw std::bad_alloc();
    library_.reset(library);
    FT_Face face = nullptr;
    const auto* data = reinterpret_cast<const FT_Byte*>(bytes.data());  // NOLINT(*-reinterpret-cast): bytes
    if (FT_New_Memory_Face(library, data, static_cast<FT_Long>(bytes.size()), 0, &face) != 0) damaged();
    face_.reset(face);
}

long FontFile::width(char32_t character) const {
    if (FT_Load_Glyph(face_.get(), glyph(character), FT_LOAD_NO_SCALE) != 0) damaged();
    return face_->glyph->metrics.horiAdvance * 1000 / face_->units_per_EM;
}

std::string FontFile::extents() const {
    const auto t = [&](long units) { return units * 1000 / face_->units_per_EM; };
    return fmt::format("/FontBBox[{} {} {} {}]/Ascent {}/Descent {}", t(face_->bbox.xMin), t(face_->bbox.yMin),
                       t(face_->bbox.xMax), t(face_->bbox.yMax), t(face_->ascender), t(face_->descender));
}

std::string FontFile::table(FT_ULong tag) const {
    FT_ULong length = 0;
    if (FT_Load_Sfnt_Table(face_.get(), tag, 0, nullptr, &length) != 0) damaged();
    std::string bytes(length, '\0');
    auto* const into = reinterpret_cast<FT_Byte*>(bytes.data());  // NOLINT(*-reinterpret-cast): bytes
    if (FT_Load_Sfnt_Table(face_.get(), tag, 0, into, &length) != 0) damaged();
    return bytes;
}

std::string FontFile::cut_down_to(const std::map<unsigned char, char32_t>& characters) const {
    std::string head = table(FT_MAKE_TAG('h', 'e', 'a', 'd')), hhea = table(FT_MAKE_TAG('h', 'h', 'e', 'a'));
    std::string maxp = table(FT_MAKE_TAG('m', 'a', 'x', 'p'));
    Outlines outlines(table(FT_MAKE_TAG('g', 'l', 'y', 'f')), table(FT_MAKE_TAG('l', 'o', 'c', 'a')),
                      read(head, long_offsets_at, 2) != 0);
    outlines.keep(0);
    std::map<unsigned char, unsigned> glyphs;
    for (const auto& [code, character] : characters) glyphs[code] = outlines.keep(glyph(character));
    auto [glyf, loca, long_offsets] = outlines.written();
    const unsigned with_advance = read(hhea, metrics_at, 2);
    const auto count = static_cast<unsigned>(outlines.kept().size());
    write(head, long_offsets_at, long_offsets ? 1 : 0, 2);
    write(hhea, metrics_at, count, 2);
    write(maxp, glyphs_at, count, 2);
    return file_of({{"cmap", map_of(glyphs)},
                    {"glyf", std::move(glyf)},
                    {"head", std::move(head)},
                    {"hhea", std::move(hhea)},
                    {"hmtx", metrics_of(outlines.kept(), table(FT_MAKE_TAG('h', 'm', 't', 'x')), with_advance)},
                    {"loca", std::move(loca)},
                    {"maxp", std::move(maxp)}});
}

}  // namespace kerfpacket::output
