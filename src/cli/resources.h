#pragma once
// What stands beside the program: the words of the sheets and the faces they are set in.

#include <filesystem>
#include <string>

#include "sheets/packet.h"

namespace kerfpacket::cli {

class Resources {
public:
    /// Reads home/templates and home/fonts; throws std::runtime_error in plain words.
    Resources(const std::filesystem::path& home, const std::string& language);

    const fonts::Faces& faces() const { return faces_; }
    sheets::Kit kit() const { return {faces_, words_, style_}; }

private:
    fonts::Faces faces_;
    fonts::Words words_;
    fonts::Style style_;
};

}  // namespace kerfpacket::cli
