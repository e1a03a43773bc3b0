#include "cli/console.h"

#include <stdexcept>
#include <utility>

namespace kerfpacket::cli {

Console::Console(std::ostream& results, std::ostream& messages, bool watched, Patience patience)
    : results_(results), messages_(messages), patience_(patience) {
    if (watched) watcher_ = std::jthread([this](const std::stop_token& stop) { watch(stop); });
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
    results_ << text;
}

void Console::message(std::string_view text) {
    const std::lock_guard lock(mutex_);
    erase();
    messages_ << text;
}

void Console::flush() {
    const std::lock_guard lock(mutex_);
    if (!results_.flush()) throw std::runtime_error("the results could not be written: is the disk full?");
}

void Console::watch(const std::stop_token& stop) {
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
    messages_ << doing_ << " ..." << std::flush;
    shown_ = true;
}

void Console::erase() {
    // Carriage return and "erase to the end of the line" of ECMA-48.
    if (shown_) messages_ << "\r\x1b[K" << std::flush;
    shown_ = false;
}

}  // namespace kerfpacket::cli
