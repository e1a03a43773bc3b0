#pragma once
// A PDF that comes from outside and may be anything: how its bytes are got, and how it is read within bounds.

#include <cstddef>
#include <filesystem>
#include <functional>
#include <stdexcept>
#include <string>
#include <string_view>

namespace kerfpacket::output {

/// What is wrong with a file, "is ...": it is none of ours, or not as it was written.
class Refusal : public std::runtime_error {
public:
    using std::runtime_error::runtime_error;
};

/// A file larger than any of its kind, by its name.
class TooLarge : public std::runtime_error {
public:
    using std::runtime_error::runtime_error;
};

inline constexpr const char* damaged = "is damaged: it was cut short or changed, so that it is no whole PDF";

/// A kind of file: what it is called, and the most bytes it has.
struct ForeignKind {
    std::string_view name;      ///< "packet"
    std::string_view expected;  ///< "a packet"
    std::size_t most;
};

/// The bytes of a file. Throws TooLarge, and disk::Failure when it is no file or cannot be read.
std::string load_foreign(const std::filesystem::path& file, const ForeignKind& kind);

/// What `work` answers in a process of its own; what it refuses is refused here. That it took all memory or time, or
/// crashed, is a disk::Failure that says `beyond`, as is that no process can be had. `file` is only for the words.
std::string read_in_bounds(const std::function<std::string()>& work, const ForeignKind& kind,
                           const std::filesystem::path& file, const std::string& beyond);

}  // namespace kerfpacket::output
