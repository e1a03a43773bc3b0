#pragma once
// What may stand next on the command line, for the shells that complete it.

#include <filesystem>
#include <string>
#include <vector>

#include "cli/console.h"

namespace CLI {
class App;
}

namespace kerfpacket::cli {

struct CompleteChoice {
    std::vector<std::string> words;  ///< behind the program's name, the last one as far as it is typed
};

/// Tells a line for each word that may stand where the last one does, and after a tab what it is; ":files" with an
/// ending after the tab, or ":folders", where the shell looks for a name itself. Commands, options and their words are
/// those of `app`; media, sheets and the pieces of the job are asked for where they are known. Mistakes are no
/// candidates: nothing is told of them.
Status complete(const CLI::App& app, const CompleteChoice& choice, Console& console, const std::filesystem::path& home);

}  // namespace kerfpacket::cli
