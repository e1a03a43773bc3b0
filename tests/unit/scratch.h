#pragma once
// A folder for one test, gone with it.

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <stdexcept>
#include <string>

#include <unistd.h>

namespace kerfpacket {

class Scratch {
public:
    Scratch() {
        std::string name = (std::filesystem::temp_directory_path() / "kerfpacket-test-XXXXXX").string();
        if (::mkdtemp(name.data()) == nullptr) throw std::runtime_error("no folder for the test");
        path_ = name;
    }
    ~Scratch() {
        std::error_code ignored;
        std::filesystem::remove_all(path_, ignored);
    }
    Scratch(const Scratch&) = delete;
    Scratch& operator=(const Scratch&) = delete;

    const std::filesystem::path& path() const { return path_; }
    void write(const std::string& name, const std::string& text) const {
        std::filesystem::create_directories((path_ / name).parent_path());
        std::ofstream(path_ / name, std::ios::binary) << text;
    }

private:
    std::filesystem::path path_;
};

/// What a call throws, in words; empty when it throws nothing.
template <class Call>
std::string thrown_by(Call call) {
    try {
        call();
    } catch (const std::exception& error) { return error.what(); }
    return {};
}

}  // namespace kerfpacket
