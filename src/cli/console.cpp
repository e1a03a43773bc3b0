#include "cli/console.h"

#include <algorithm>
#include <system_error>
#include <utility>

#include <fmt/format.h>

#include "disk/leftovers.h"
#include "job/text.h"

namespace kerfpacket::cli {

std::string harmless(std::string_view text) {
    std::string out;
    while (!text.empty()) {
        const std::size_t good = std::min(job::first_bad_utf8(text).value_or(text.size()), text.size());
        for (std::string_view rest = text.substr(0, good); !rest.empty();) {
            const std::string_view character = rest.substr(0, job::byte_of_character(rest, 1));
            if (character == "\n" || character == "\t" || job::printable(character) == character) out += character;
            else out += fmt::format("\\u{:04X}", static_cast<unsigned>(job::code_point(character)));
            rest.remove_prefix(character.size());
        }
        if (good < text.size()) out += fmt::format("\\x{:02X}", static_cast<unsigned char>(text[good]));
        text.remove_prefix(std::min(good + 1, text.size()));
    }
    return out;
}

Console::Console(std::ostream& results, std::ostream& messages, bool watched, Patience patience)
    : results_(results), messages_(messages), patience_(patience) {
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

void Console::message(std::string_view text) {
    const std::lock_guard lock(mutex_);
    erase();
    messages_ << harmless(text);
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
    if (doing_.empty()) return;
    messages_ << harmless(doing_) << " ..." << std::flush;
    shown_ = true;
}

void Console::erase() {
    // Carriage return and "erase to the end of the line" of ECMA-48.
    if (shown_) messages_ << "\r\x1b[K" << std::flush;
    shown_ = false;
}

}  // namespace kerfpacket::cli
