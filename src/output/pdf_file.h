#pragma once
// The objects of a PDF on their way into a file (ISO 32000-1, 7.3 and 7.5).

#include <string>
#include <string_view>
#include <vector>

namespace kerfpacket::output {

/// An object's number, by which others name it.
struct Ref {
    int number = 0;
    bool operator==(const Ref&) const = default;
};
/// "12 0 R"
std::string named(Ref object);
/// "[12 0 R 13 0 R]"
std::string list_of(const std::vector<Ref>& objects);

/// A file that grows object by object; each is written once and forgotten.
class PdfFile {
public:
    enum class Form {
        plain,   ///< every object for itself, as PDF 1.4 has them and programs that write into a file like them
        packed,  ///< all but streams packed together, a third of the bytes (PDF 1.5: 7.5.7 and 7.5.8)
    };
    PdfFile(std::string_view version, Form form);

    /// Room at once for about so many bytes: to grow a large file step by step takes twice its memory.
    void expect(std::size_t bytes) { bytes_.reserve(bytes); }
    /// A number for an object that comes later.
    Ref reserve();
    void put(Ref object, std::string_view value);
    Ref add(std::string_view value);
    /// A stream that holds these bytes packed; `entries` are what its dictionary has besides.
    void put_stream(Ref object, std::string_view entries, std::string_view bytes);
    Ref add_stream(std::string_view entries, std::string_view bytes);
    /// The same of bytes that are deflated already.
    Ref add_packed_stream(std::string_view entries, std::string_view packed);
    /// A stream of bytes as they stand.
    Ref add_bare_stream(std::string_view entries, std::string_view bytes);

    /// What comes from here on is packed apart from what came before, so that who looks for it unpacks little.
    void close_together();

    /// The whole file, named by what is in it: the same objects give the same bytes.
    std::string finish(Ref catalogue, Ref information) &&;

private:
    /// Where an object is: its offset in the file, or its place in a stream of objects.
    struct Place {
        std::size_t at = 0;
        int in_stream = 0;
    };

    void begin(Ref object);
    void write_stream(Ref object, std::string_view entries, std::string_view bytes);
    std::string trailer(Ref catalogue, Ref information) const;
    void add_table(std::string_view trailer);
    void add_table_stream(const std::string& trailer);

    Form form_;
    std::string bytes_;
    std::vector<Place> places_{{}};  ///< by number; number 0 is nobody's
    std::vector<int> together_;      ///< the objects of the stream of objects that is open
    std::string together_text_;
    std::string together_offsets_;
};

}  // namespace kerfpacket::output
