#include "disk/leftovers.h"

#include <array>
#include <atomic>
#include <csignal>

#include <sys/prctl.h>
#include <unistd.h>

namespace kerfpacket::disk {

/// One of a chain that only grows, so that a signal can walk it at any time.
struct Leftover::Place {
    std::atomic<const char*> file{nullptr};
    Place* next = nullptr;
};

namespace {

constexpr std::array ending{SIGINT, SIGTERM, SIGHUP, SIGQUIT, SIGXCPU};

std::atomic<Leftover::Place*> first{nullptr};  // NOLINT(*-avoid-non-const-global-variables): a signal needs it
std::atomic<pid_t> owner{0};                   // NOLINT(*-avoid-non-const-global-variables): the same

Leftover::Place* free_place() {
    for (Leftover::Place* place = first; place != nullptr; place = place->next)
        if (place->file == nullptr) return place;
    auto* added = new Leftover::Place;  // NOLINT(*-owning-memory): never freed, a signal may stand in it
    added->next = first;
    first = added;
    return added;
}

/// Only what POSIX lets a signal handler call.
void tidy_up(int signal) {
    // A child that was ended leaves its parent's files alone.
    if (::getpid() == owner)
        for (const Leftover::Place* place = first; place != nullptr; place = place->next)
            if (const char* file = place->file) ::unlink(file);
    // The handler is gone by now (SA_RESETHAND): this ends the program.
    ::raise(signal);
}

}  // namespace

Leftover::Leftover(const std::filesystem::path& file) : file_(file.string()), place_(free_place()) {
    place_->file = file_.c_str();
}

Leftover::~Leftover() { place_->file = nullptr; }

void tidy_up_on_signals() {
    owner = ::getpid();
    struct sigaction action {};
    action.sa_handler = tidy_up;
    action.sa_flags = static_cast<int>(SA_RESETHAND | SA_NODEFER);
    for (const int signal : ending) {
        struct sigaction before {};
        // What whoever started the program wants ignored (nohup) stays so.
        if (::sigaction(signal, nullptr, &before) == 0 && before.sa_handler != SIG_IGN)
            ::sigaction(signal, &action, nullptr);
    }
    for (const int told : {SIGXFSZ, SIGPIPE}) std::signal(told, SIG_IGN);
}

void tidy_up_with_parent() {
    ::prctl(PR_SET_PDEATHSIG, SIGTERM);  // NOLINT(*-vararg)
    // What was left over when this process began is the parent's.
    for (Leftover::Place* place = first; place != nullptr; place = place->next) place->file = nullptr;
    tidy_up_on_signals();
}

void leave_signals_to_others() {
    sigset_t signals;
    sigemptyset(&signals);
    for (const int signal : ending) sigaddset(&signals, signal);
    pthread_sigmask(SIG_BLOCK, &signals, nullptr);
}

}  // namespace kerfpacket::disk
