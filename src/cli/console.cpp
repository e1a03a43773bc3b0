#include "cli/console.h"

#include <algorithm>
#include <array>
#include <system_error>
#include <utility>

#include <fmt/format.h>

#include "disk/leftovers.h"
#include "job/text.h"

namespace kerfpacket::cli {

std::string harmless(std::string_view text) {
    const auto plain = [](char c) { return (c >= ' ' && c <= '~') || c == '\n' || c == '\t'; };
    std::string out;
    out.reserve(text.size());
    while (!text.empty()) {
        std::string_view character = text.substr(0, 1);
        if (plain(text.front())) out += character;
        else {
            // A character of UTF-8 has at most four bytes.
            const std::string_view next = text.substr(0, 4).substr(0, job::byte_of_character(text.substr(0, 4), 1));
            const std::size_t good = job::first_bad_utf8(next).value_or(next.size());
            if (good > 0) character = next.substr(0, good);
            const bool shown = good > 0 && job::printable(character) == character;
            if (shown) out += character;
            else if (good > 0) out += fmt::format("\\u{:04X}", static_cast<unsigned>(job::code_point(character)));
            else out += fmt::format("\\x{:02X}", static_cast<unsigned char>(text.front()));
        }
        text.remove_prefix(character.size());
    }
    return out;
}

namespace {

/// How job::render heads its messages, and the colours of ECMA-48, 8.3.117: bold, and red or yellow.
constexpr std::array<std::pair<std::string_view, std::string_view>, 3> heads{
    {{": error: ", "\x1b[1;31m"}, {": do not cut: ", "\x1b[1;31m"}, {": caution: ", "\x1b[1;33m"}}};

/// A line with its head in colour, where it has one; what follows the first head is the message's own.
std::string coloured_line(std::string_view line) {
    std::size_t first = std::string_view::npos;
    std::string_view head, colour;
    for (const auto& [words, with] : heads)
        if (const std::size_t at = line.find(words); at < first) {
            first = at;
            head = words.substr(2, words.size() - 3);
            colour = with;
        }
    if (first == std::string_view::npos || line.starts_with(' ')) return std::string(line);
    return fmt::format("{}{}{}\x1b[0m{}", line.substr(0, first + 2), colour, head,
                       line.substr(first + 2 + head.size()));
}

std::string coloured(std::string_view text) {
    std::string out;
    while (!text.empty()) {
        const std::size_t end = std::min(text.find('\n'), text.size() - 1) + 1;
        out += coloured_line(text.substr(0, end));
        text.remove_prefix(end);
    }
    return out;
}

}  // namespace

Console::Console(std::ostream& results, std::ostream& messages, bool watched, Patience patience)
    : results_(results), messages_(messages), patience_(patience), watched_(watched) {
    if (watched) try {
            watcher_ = std::jthread([this](const std::stop_token& stop) { watch(stop); });
        } catch (const std::system_error&) {
            // Nobody is shown what is being done; it is done all the same.
        }
}

Console::~Console() {
    if (watcher_.joinable()) {
        watcher_.request_stop();
        watcher_.join();
    }
    erase();
}

void Console::doing(std::string what) {
    const std::lock_guard lock(mutex_);
    doing_ = std::move(what);
    changed_.notify_all();
}

std::string Console::doing() const {
    const std::lock_guard lock(mutex_);
    return doing_;
}

void Console::result(std::string_view text) {
    const std::lock_guard lock(mutex_);
    erase();
    results_ << harmless(text);
}

void Console::done(std::string_view text) {
    if (!manners().quiet) result(text);
}

void Console::next(std::string_view text) {
    if (watched_ && !manners().quiet) message(fmt::format("next: {}\n", text));
}

void Console::message(std::string_view text) {
    const std::lock_guard lock(mutex_);
    erase();
    const std::string told = harmless(text);
    messages_ << (manners_.coloured ? coloured(told) : told);
}

void Console::behave(Manners manners) {
    const std::lock_guard lock(mutex_);
    manners_ = manners;
}

Manners Console::manners() const {
    const std::lock_guard lock(mutex_);
    return manners_;
}

void Console::doubt(std::string_view text) {
    message(text);
    doubted_ = true;
}

Status Console::flush(Status status) {
    {
        const std::lock_guard lock(mutex_);
        results_.flush();
    }
    const Status told = doubted_ && status == Status::done ? Status::cautions : status;
    if (results_.good()) return told;
    message(fmt::format("kerfpacket: {}the results could not be told: the output is closed, or its disk is full\n",
                        written_ ? "caution: all is written, but " : ""));
    return written_ && told == Status::done ? Status::cautions : written_ ? told : Status::errors;
}

void Console::watch(const std::stop_token& stop) {
    disk::leave_signals_to_others();
    std::unique_lock lock(mutex_);
    changed_.wait_for(lock, stop, patience_, [] { return false; });
    while (!stop.stop_requested()) {
        show();
        const std::string before = doing_;
        changed_.wait(lock, stop, [&] { return doing_ != before; });
    }
}

void Console::show() {
    erase();
    if (doing_.empty() || manners_.quiet) return;
    messages_ << harmless(doing_) << " ..." << std::flush;
    shown_ = true;
}

void Console::erase() {
    // Carriage return and "erase to the end of the line" of ECMA-48.
    if (shown_) messages_ << "\r\x1b[K" << std::flush;
    shown_ = false;
}

}  // namespace kerfpacket::cli
