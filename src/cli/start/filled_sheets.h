#pragma once
// Filled field sheets as answers: what "start" would ask, as far as it was written down on site.

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "cli/start/sheet_fields.h"
#include "cli/start/talk.h"
#include "fonts/words.h"

namespace kerfpacket::cli {

class FilledSheets {
public:
    FilledSheets() = default;
    /// Reads them, in this order, each in a process with limits. Throws std::runtime_error that names the file.
    explicit FilledSheets(const std::vector<std::filesystem::path>& files);

    bool empty() const { return pages_.empty(); }
    /// What was read, page by page, and what is empty there: lines of text.
    std::string told(const fonts::Words& words) const;
    /// What the sheets say and no question asks for: for the head of the job file, a line each.
    std::vector<std::string> remarks() const;
    /// What was measured to check the rest by, and does not fit it: a sentence each.
    std::vector<std::string> doubts(const fonts::Words& words) const;

    /// What the sheets answer to the question that is asked now; none where they do not, or where what they say was
    /// refused, so that a person says it. Each answer is given once.
    std::optional<SheetAnswer> answer(const Talk& talk);

private:
    struct Page {
        std::string file;
        SheetPage page;
        std::vector<SheetAnswer> answers;
    };

    std::vector<Page> pages_;  ///< that something was measured on
    std::vector<SheetAnswer> head_;
    std::size_t waiting_for_ = 0;  ///< answers in the talk, until the sheets are asked again
};

}  // namespace kerfpacket::cli
