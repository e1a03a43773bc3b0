#pragma once
// Files that must not outlive the program, should a signal end it.

#include <filesystem>
#include <string>

namespace kerfpacket::disk {

/// A file that is removed when a signal ends the program while this lives.
class Leftover {
public:
    explicit Leftover(const std::filesystem::path& file);
    ~Leftover();
    Leftover(const Leftover&) = delete;
    Leftover& operator=(const Leftover&) = delete;

    struct Place;

private:
    std::string file_;
    Place* place_;
};

/// From here on a signal that asks the program to end (SIGINT, SIGTERM, SIGHUP, SIGQUIT, SIGXCPU) removes what is left
/// over and then ends it as that signal does, so that the shell is told. Of a limit on the size of files (SIGXFSZ) and
/// a reader that went away (SIGPIPE) the call on the file tells.
void tidy_up_on_signals();

/// The same in a child of this process (`in_child`), which a signal to its parent is to end as well.
void tidy_up_with_parent();

/// Keeps those signals from a thread that is not the one that writes: call it there first.
void leave_signals_to_others();

}  // namespace kerfpacket::disk
