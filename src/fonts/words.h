#pragma once
// The printed words: templates/<language>/*.toml. The key is "file.key", e.g. "strip.title".

#include <filesystem>
#include <initializer_list>
#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace kerfpacket::fonts {

class Words {
public:
    /// Reads every *.toml of a language's folder; throws std::runtime_error that names file, line and key.
    Words(const std::filesystem::path& templates, const std::string& language);

    using Values = std::vector<std::pair<std::string, std::string>>;

    /// The words of a key; a missing key is an error that names it.
    const std::string& operator()(std::string_view key) const;
    /// The words with {name} replaced by values. A name the template asks for and nobody gives is an error.
    std::string operator()(std::string_view key, const Values& values) const;
    /// A list of sentences.
    const std::vector<std::string>& list(std::string_view key) const;

private:
    std::string language_;
    std::map<std::string, std::string, std::less<>> words_;
    std::map<std::string, std::vector<std::string>, std::less<>> lists_;
};

}  // namespace kerfpacket::fonts
