#pragma once
// What stands beside the program: the words of the sheets and the faces they are set in.

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "job/job.h"
#include "sheets/packet.h"

namespace kerfpacket::cli {

/// The folder in which templates/ and fonts/ stand: that of the program, as in a build, or the one that it was
/// installed with, wherever all of it was moved to since. That of the program where neither is there; then nobody finds
/// them. Throws disk::Failure where it cannot be told.
std::filesystem::path home_of(const std::filesystem::path& program_folder);

class Resources {
public:
    /// Reads home/templates and home/fonts, in the languages of a job, with a shop's words in place of some; throws
    /// std::runtime_error in plain words.
    Resources(const std::filesystem::path& home, const job::Header& languages,
              const std::vector<fonts::WordFile>& shop = {});
    /// One language, none of a shop's words.
    Resources(const std::filesystem::path& home, const std::string& language);

    const fonts::Faces& faces() const { return faces_; }
    sheets::Kit kit() const { return {faces_, words_, style_, second_words_ ? &*second_words_ : nullptr}; }

private:
    fonts::Faces faces_;
    fonts::Words words_;
    std::optional<fonts::Words> second_words_;
    fonts::Style style_;
};

}  // namespace kerfpacket::cli
