#pragma once
// Where results and messages go, and what is being done just now.

#include <chrono>
#include <condition_variable>
#include <mutex>
#include <ostream>
#include <string>
#include <string_view>
#include <thread>

namespace kerfpacket::cli {

/// How a command ended; the program's exit status.
enum class Status { done = 0, errors = 2, cautions = 3 };

/// How much is told, and how.
struct Manners {
    bool quiet = false;     ///< nothing of what went well, but for results that were asked for
    bool coloured = false;  ///< what kind of message it is stands in colour: SGR of ECMA-48
};

/// The text with \uXXXX in place of each control but the line end and the tab, of each mark that turns the direction of
/// writing, and of each byte that is no UTF-8. Within the strings of JSON it still means the same.
std::string harmless(std::string_view text);

/// Results go to one stream, messages to another. Whatever they hold, names of files and words of the user among it,
/// nothing of it moves a terminal's cursor or turns its text: `harmless`. When a person watches the messages, what is
/// being done is shown there once the work has lasted `patience`, and erased before anything else is written.
class Console {
public:
    using Patience = std::chrono::milliseconds;

    Console(std::ostream& results, std::ostream& messages, bool watched,
            Patience patience = std::chrono::milliseconds(500));
    ~Console();
    Console(const Console&) = delete;
    Console& operator=(const Console&) = delete;

    /// What is being done from now on, as in "laying out the sheets".
    void doing(std::string what);
    std::string doing() const;

    /// From here on.
    void behave(Manners manners);
    Manners manners() const;
    /// A person reads the messages on a terminal.
    bool watched() const { return watched_; }

    void result(std::string_view text);
    /// A result that only says what was done; not told where it is to be quiet.
    void done(std::string_view text);
    /// What to do next, told to a person who watches; not where it is to be quiet.
    void next(std::string_view text);
    void message(std::string_view text);
    /// A message that makes the command end with cautions.
    void doubt(std::string_view text);
    /// From here on what the command was asked to write stands on the disk.
    void written() { written_ = true; }

    /// Hands the results to the system. How a command ends that came to `status`: where the results cannot be told, the
    /// files that were written are a caution, and nothing but results is an error.
    Status flush(Status status);

private:
    void watch(const std::stop_token& stop);
    void show();
    void erase();

    std::ostream& results_;
    std::ostream& messages_;
    Patience patience_;
    mutable std::mutex mutex_;
    std::condition_variable_any changed_;
    std::string doing_;
    const bool watched_;
    Manners manners_;
    bool shown_ = false;
    bool doubted_ = false;
    bool written_ = false;
    std::jthread watcher_;  ///< last: it uses the members above
};

}  // namespace kerfpacket::cli
