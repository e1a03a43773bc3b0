#include "output/pdf_file.h"

#include <iterator>

#include <fmt/format.h>

#include "measure/require.h"
#include "output/big_endian.h"
#include "output/deflate.h"
#include "output/seal.h"

namespace kerfpacket::output {
namespace {

/// A reader unpacks a whole stream of objects for one of them.
constexpr std::size_t most_together = 2000;

}  // namespace

std::string named(Ref object) { return std::to_string(object.number) + " 0 R"; }

std::string list_of(const std::vector<Ref>& objects) {
    std::string text = "[";
    for (const Ref object : objects) fmt::format_to(std::back_inserter(text), "{} 0 R ", object.number);
    if (text.size() > 1) text.pop_back();
    return text + "]";
}

PdfFile::PdfFile(std::string_view version, Form form) : form_(form) {
    // The second line tells programs that carry files about that this one is not text (7.5.2).
    bytes_ = fmt::format("%PDF-{}\n%\xE2\xE3\xCF\xD3\n", version);
}

Ref PdfFile::reserve() {
    places_.emplace_back();
    return {static_cast<int>(places_.size()) - 1};
}

void PdfFile::begin(Ref object) {
    Place& place = places_.at(static_cast<std::size_t>(object.number));
    measure::require(place.at == 0 && object.number > 0, "an object is written once");
    place.at = bytes_.size();
    fmt::format_to(std::back_inserter(bytes_), "{} 0 obj\n", object.number);
}

void PdfFile::put(Ref object, std::string_view value) {
    if (form_ == Form::plain) {
        begin(object);
        bytes_.append(value).append("\nendobj\n");
        return;
    }
    together_offsets_ += std::to_string(object.number) + ' ' + std::to_string(together_text_.size()) + ' ';
    together_text_.append(value).append("\n");
    together_.push_back(object.number);
    if (together_.size() == most_together) close_together();
}

Ref PdfFile::add(std::string_view value) {
    const Ref object = reserve();
    put(object, value);
    return object;
}

void PdfFile::write_stream(Ref object, std::string_view entries, std::string_view bytes) {
    begin(object);
    fmt::format_to(std::back_inserter(bytes_), "<<{}/Length {}>>\nstream\n", entries, bytes.size());
    // A line's end before the keyword: ISO 19005-1, 6.1.7.
    bytes_.append(bytes).append("\nendstream\nendobj\n");
}

void PdfFile::put_stream(Ref object, std::string_view entries, std::string_view bytes) {
    write_stream(object, fmt::format("{}/Filter/FlateDecode", entries), deflated(bytes));
}

Ref PdfFile::add_stream(std::string_view entries, std::string_view bytes) {
    const Ref object = reserve();
    put_stream(object, entries, bytes);
    return object;
}

Ref PdfFile::add_packed_stream(std::string_view entries, std::string_view packed) {
    const Ref object = reserve();
    write_stream(object, fmt::format("{}/Filter/FlateDecode", entries), packed);
    return object;
}

Ref PdfFile::add_bare_stream(std::string_view entries, std::string_view bytes) {
    const Ref object = reserve();
    write_stream(object, entries, bytes);
    return object;
}

void PdfFile::close_together() {
    if (together_.empty()) return;
    const Ref stream = reserve();
    for (std::size_t i = 0; i < together_.size(); ++i) {
        Place& place = places_.at(static_cast<std::size_t>(together_[i]));
        measure::require(place.at == 0 && place.in_stream == 0, "an object is written once");
        place = {i, stream.number};
    }
    put_stream(stream, fmt::format("/Type/ObjStm/N {}/First {}", together_.size(), together_offsets_.size()),
               together_offsets_ + together_text_);
    together_.clear();
    together_text_.clear();
    together_offsets_.clear();
}

/// The name of the file is what it holds, and no clock (14.4 asks for this digest).
std::string PdfFile::trailer(Ref catalogue, Ref information) const {
    // The table of a packed file is an object itself.
    const std::size_t size = places_.size() + (form_ == Form::packed ? 1 : 0);
    return fmt::format("/Size {0}/Root {1}/Info {2}/ID[<{3}><{3}>]", size, named(catalogue), named(information),
                       md5_of(bytes_));
}

void PdfFile::add_table(std::string_view trailer) {
    fmt::format_to(std::back_inserter(bytes_), "xref\n0 {}\n0000000000 65535 f \n", places_.size());
    for (std::size_t i = 1; i < places_.size(); ++i)
        fmt::format_to(std::back_inserter(bytes_), "{:010} 00000 n \n", places_[i].at);
    fmt::format_to(std::back_inserter(bytes_), "trailer\n<<{}>>\n", trailer);
}

/// Rows of a kind, four bytes of where, two of which (7.5.8.3, table 18), each told by what it differs from the row
/// above (7.4.4.4): objects that were packed one after the other differ by one.
void PdfFile::add_table_stream(const std::string& trailer) {
    const Ref table = reserve();
    places_.back().at = bytes_.size();
    std::string rows, above(7, '\0');
    for (std::size_t i = 0; i < places_.size(); ++i) {
        const auto& [at, in_stream] = places_[i];
        std::string row(1, static_cast<char>(i == 0 ? 0 : in_stream != 0 ? 2 : 1));
        add_big_endian(row, in_stream != 0 ? static_cast<std::size_t>(in_stream) : at, 4);
        add_big_endian(row, i == 0 ? 0xFFFF : in_stream != 0 ? at : 0, 2);
        rows += '\2';  // as in PNG: by the row above
        for (std::size_t k = 0; k < row.size(); ++k) rows += static_cast<char>(row[k] - above[k]);
        above = std::move(row);
    }
    places_.back().at = 0;
    put_stream(table, "/Type/XRef/W[1 4 2]/DecodeParms<</Predictor 12/Columns 7>>" + trailer, rows);
}

std::string PdfFile::finish(Ref catalogue, Ref information) && {
    close_together();
    for (std::size_t i = 1; i < places_.size(); ++i)
        measure::require(places_[i].at != 0 || places_[i].in_stream != 0, "every object of a PDF is written");
    const std::string entries = trailer(catalogue, information);
    const std::size_t at = bytes_.size();
    if (form_ == Form::plain) add_table(entries);
    else add_table_stream(entries);
    fmt::format_to(std::back_inserter(bytes_), "startxref\n{}\n%%EOF\n", at);
    return std::move(bytes_);
}

}  // namespace kerfpacket::output
