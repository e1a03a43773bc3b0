#pragma once
// Runs programs and keeps what they said; folders and files for the length of a test.

#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <string>
#include <vector>

namespace kerfpacket::tests {

namespace fs = std::filesystem;

inline std::string slurp(const fs::path& file) {
    std::ifstream in(file, std::ios::binary);
    if (!in) throw std::runtime_error("cannot read " + file.string());
    return {std::istreambuf_iterator<char>(in), {}};
}

inline void spill(const fs::path& file, const std::string& bytes) {
    std::ofstream out(file, std::ios::binary);
    out << bytes;
    if (!out.flush()) throw std::runtime_error("cannot write " + file.string());
}

/// A fresh folder, removed with all it holds.
class Folder {
public:
    Folder() {
        std::string name = (fs::temp_directory_path() / "kerfpacket-XXXXXX").string();
        if (mkdtemp(name.data()) == nullptr) throw std::runtime_error("cannot make " + name);
        path_ = name;
    }
    ~Folder() {
        std::error_code ignored;
        fs::remove_all(path_, ignored);
    }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;

    fs::path operator/(const fs::path& name) const { return path_ / name; }
    const fs::path& path() const { return path_; }

private:
    fs::path path_;
};

struct Outcome {
    int status = -1;
    std::string out;
    std::string err;
};

inline std::string quoted(const std::string& word) {
    std::string text = "'";
    for (const char c : word) text += c == '\'' ? std::string("'\\''") : std::string(1, c);
    return text + "'";
}

/// Runs a command of separate words; `before` goes in front unquoted ("cd X &&", "LC_ALL=C"), `input` is its standard
/// input.
inline Outcome run_program(const std::vector<std::string>& words, const std::string& before = "",
                           const fs::path& input = "/dev/null") {
    const Folder folder;
    std::string command = before + " ";
    for (const std::string& word : words) command += quoted(word) + " ";
    command += "<" + quoted(input.string()) + " >" + quoted((folder / "out").string()) + " 2>" +
               quoted((folder / "err").string());
    const int status = std::system(command.c_str());
    return {WIFEXITED(status) ? WEXITSTATUS(status) : -1, slurp(folder / "out"), slurp(folder / "err")};
}

/// The sample jobs of out-samples/, by name.
inline std::vector<fs::path> sample_folders() {
    std::vector<fs::path> folders;
    for (const fs::directory_entry& entry : fs::directory_iterator(fs::path(KERFPACKET_SOURCE_DIR) / "out-samples"))
        if (fs::exists(entry.path() / "job.toml")) folders.push_back(entry.path());
    std::sort(folders.begin(), folders.end());
    return folders;
}

/// The packet that the program makes of a sample today; those beside some samples are of the last version.
inline std::string built_sample(const fs::path& sample) {
    static const Folder folder;
    const fs::path packet = folder / (sample.filename().string() + ".pdf");
    if (fs::exists(packet)) return packet.string();
    const Outcome built =
        run_program({KERFPACKET_PROGRAM, "build", (sample / "job.toml").string(), "--out", packet.string()});
    if (built.status != 0 && built.status != 3) throw std::runtime_error(sample.string() + "\n" + built.err);
    return packet.string();
}

}  // namespace kerfpacket::tests
