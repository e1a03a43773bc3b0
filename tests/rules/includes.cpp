// The one-way street of DEVELOPERS.md, read from the #include lines of src/.

#include <gtest/gtest.h>

#include <map>
#include <regex>
#include <set>
#include <sstream>

#include "support/program.h"

namespace kerfpacket::tests {
namespace {

using Rooms = std::set<std::string>;

/// Which rooms a room may include, besides itself.
const std::map<std::string, Rooms> arrows = {
    {"measure", {}},
    {"disk", {"measure"}},
    {"text", {}},
    {"geom", {"measure"}},
    {"job", {"measure", "disk", "text"}},
    {"curve", {"geom", "job", "measure"}},
    {"bend", {"measure"}},
    {"stock", {"measure"}},
    {"plan", {"curve", "bend", "stock", "job", "geom", "measure", "disk"}},
    {"page", {"geom", "measure"}},
    {"fonts", {"page", "measure", "disk", "text"}},
    {"sheets", {"plan", "page", "fonts", "geom", "measure", "disk", "job", "bend", "stock"}},
    {"output", {"page", "fonts", "geom", "measure", "disk"}},
    {"cli", {"measure", "disk", "geom", "job", "curve", "bend", "stock", "plan", "page", "fonts", "sheets", "output"}},
};

/// Which rooms may include a library's headers.
struct Library {
    std::regex header;
    Rooms rooms;
};
const std::vector<Library> libraries = {
    {std::regex("libdeflate.*"), {"output"}},
    {std::regex("cairo.*"), {"output"}},
    {std::regex("qpdf/.*"), {"output"}},
    {std::regex(R"((ft2build\.h|freetype.*))"), {"fonts", "output"}},
    {std::regex("toml.*"), {"text"}},
    {std::regex("CLI/.*"), {"cli"}},
    {std::regex("nlohmann/.*"), {"cli"}},
    {std::regex(R"(histedit\.h|editline/.*)"), {"cli"}},
    {std::regex("nettle/.*"), {"job", "output"}},
    {std::regex("qrencode.*"), {"sheets"}},
    {std::regex("boost/.*"), {"curve", "bend"}},
    {std::regex("Eigen/.*"), {"curve"}},
    // Files and processes are asked for in one room, where a test can make each call fail.
    {std::regex(R"(fstream|fcntl\.h|dirent\.h|csignal|sys/(stat|file|wait|resource)\.h)"), {"disk"}},
};

struct Source {
    fs::path file;
    std::string room;
    std::vector<std::string> own;      ///< headers of the project, in order
    std::vector<std::string> foreign;  ///< all others
};

Source read(const fs::path& file) {
    const fs::path inside = file.lexically_relative(fs::path(KERFPACKET_SOURCE_DIR) / "src");
    Source source{file, inside.begin()->string(), {}, {}};
    static const std::regex include(R"(^#include ([<"])([^>"]+)[>"].*)");
    std::istringstream text(slurp(file));
    std::smatch match;
    for (std::string line; std::getline(text, line);)
        if (std::regex_match(line, match, include))
            (match[1] == "\"" ? source.own : source.foreign).push_back(match[2]);
    return source;
}

std::vector<Source> sources() {
    std::vector<Source> all;
    for (const fs::directory_entry& entry : fs::recursive_directory_iterator(fs::path(KERFPACKET_SOURCE_DIR) / "src")) {
        const std::string kind = entry.path().extension().string();
        if (kind == ".h" || kind == ".cpp") all.push_back(read(entry.path()));
    }
    return all;
}

TEST(Includes, EveryRoomHasItsArrows) {
    std::set<std::string> rooms;
    for (const Source& source : sources()) rooms.insert(source.room);
    for (const std::string& room : rooms) EXPECT_TRUE(arrows.contains(room)) << room << " is a new room";
    EXPECT_EQ(rooms.size(), arrows.size());
}

TEST(Includes, FollowTheArrows) {
    for (const Source& source : sources()) {
        for (const std::string& header : source.own) {
            const std::string room = header.substr(0, header.find('/'));
            EXPECT_TRUE(room == source.room || arrows.at(source.room).contains(room))
                << source.file << " must not include " << header;
        }
    }
}

// A plan is computed, and touches no file: of the room of files it takes how work is shared among cores.
TEST(Includes, APlanTouchesNoDisk) {
    std::set<std::string> of_disk;
    for (const Source& source : sources())
        if (source.room == "plan")
            for (const std::string& header : source.own)
                if (header.starts_with("disk/")) of_disk.insert(header);
    EXPECT_EQ(of_disk, std::set<std::string>{"disk/side_by_side.h"});
}

TEST(Includes, LibrariesStayInTheirRooms) {
    std::set<std::string> seen;
    for (const Source& source : sources()) {
        for (const std::string& header : source.foreign) {
            for (const Library& library : libraries) {
                if (!std::regex_match(header, library.header)) continue;
                EXPECT_TRUE(library.rooms.contains(source.room)) << source.file << " must not include " << header;
                seen.insert(header.substr(0, 3));
            }
        }
    }
    EXPECT_GE(seen.size(), 9U) << "the table names headers that nobody includes any more";
}

// A text is judged before toml++ sees it; a second way to its parser would be one without limits.
TEST(Includes, TomlIsParsedInOneRoom) {
    static const std::regex parses(R"(\btoml::(v3::)?(ex::|noex::)?parse(_file)?\s*\()");
    std::set<std::string> rooms;
    for (const Source& source : sources()) {
        const std::string text = slurp(source.file);
        if (!std::regex_search(text, parses)) continue;
        rooms.insert(source.room);
        EXPECT_EQ(source.room, "text") << source.file << " must call text::parse";
    }
    EXPECT_EQ(rooms.size(), 1U);
    for (const char* call : {"toml::parse(text)", "= toml::parse_file (name)", "toml::ex::parse(x)"})
        EXPECT_TRUE(std::regex_search(call, parses)) << call;
    EXPECT_FALSE(std::regex_search("const toml::parse_error& error; text::parse(text)", parses));
}

TEST(Includes, OwnHeaderComesFirst) {
    for (const Source& source : sources()) {
        if (source.file.extension() != ".cpp") continue;
        const fs::path header = fs::path(source.file).replace_extension(".h");
        if (!fs::exists(header)) continue;
        ASSERT_FALSE(source.own.empty()) << source.file;
        EXPECT_EQ(source.own.front(),
                  header.lexically_relative(fs::path(KERFPACKET_SOURCE_DIR) / "src").generic_string());
        const std::string text = slurp(source.file);
        EXPECT_EQ(text.find("#include"), text.find("#include \"" + source.own.front())) << source.file;
    }
}

TEST(Includes, HeadersAreReadOnce) {
    for (const Source& source : sources()) {
        if (source.file.extension() != ".h") continue;
        EXPECT_TRUE(slurp(source.file).starts_with("#pragma once\n")) << source.file;
    }
}

// Two of the same name in one namespace are one to the linker, which takes either: no warning tells of it.
TEST(Includes, ConstantsOfARoomHaveNamesOfTheirOwn) {
    static const std::regex constant(R"(\ninline (?:constexpr|const) [\w:<>, ]+ (\w+) ?[={])");
    std::map<std::string, fs::path> seen;
    for (const Source& source : sources()) {
        if (source.file.extension() != ".h") continue;
        const std::string text = slurp(source.file);
        for (std::sregex_iterator at(text.begin(), text.end(), constant), end; at != end; ++at) {
            const auto [first, added] = seen.try_emplace(source.room + "/" + at->str(1), source.file);
            EXPECT_TRUE(added) << at->str(1) << " in " << first->second << " and " << source.file;
        }
    }
    EXPECT_GT(seen.size(), 50U);
}

}  // namespace
}  // namespace kerfpacket::tests
