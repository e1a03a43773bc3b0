#include <clocale>
#include <cstdio>
#include <memory>

#include <histedit.h>
#include <unistd.h>

#include "cli/start/lines.h"

namespace kerfpacket::cli {
namespace {

/// libedit, held while somebody is asked.
class Editor {
public:
    Editor() {
        // libedit takes characters as the locale has them; UTF-8 is what the files are in, whatever the user's is.
        std::setlocale(LC_CTYPE, "C.UTF-8");  // NOLINT(concurrency-mt-unsafe): before any other thread asks
        edit_.reset(el_init("kerfpacket", stdin, stdout, stderr));
        history_.reset(history_init());
        if (!edit_ || !history_) throw std::bad_alloc();
        HistEvent event{};
        history(history_.get(), &event, H_SETSIZE, 200);        // NOLINT(*-vararg): so it is called
        el_set(edit_.get(), EL_CLIENTDATA, this);               // NOLINT(*-vararg)
        el_set(edit_.get(), EL_PROMPT, &Editor::prompt);        // NOLINT(*-vararg)
        el_set(edit_.get(), EL_EDITOR, "emacs");                // NOLINT(*-vararg)
        el_set(edit_.get(), EL_SIGNAL, 1);                      // NOLINT(*-vararg)
        el_set(edit_.get(), EL_HIST, history, history_.get());  // NOLINT(*-vararg)
    }
    ~Editor() {
        history_.reset();
        edit_.reset();
        std::setlocale(LC_CTYPE, "C");  // NOLINT(concurrency-mt-unsafe)
    }
    Editor(const Editor&) = delete;
    Editor& operator=(const Editor&) = delete;

    std::optional<std::string> ask(const std::string& prompt) {
        prompt_ = prompt;
        int count = 0;
        const char* const typed = el_gets(edit_.get(), &count);
        if (typed == nullptr || count <= 0) return {};
        std::string line(typed, static_cast<std::size_t>(count));
        while (!line.empty() && (line.back() == '\n' || line.back() == '\r')) line.pop_back();
        if (line.empty()) return line;
        HistEvent event{};
        history(history_.get(), &event, H_ENTER, line.c_str());  // NOLINT(*-vararg)
        return line;
    }

private:
    static char* prompt(EditLine* edit) {
        Editor* self = nullptr;
        el_get(edit, EL_CLIENTDATA, &self);  // NOLINT(*-vararg)
        return self->prompt_.data();
    }

    struct End {
        void operator()(EditLine* edit) const { el_end(edit); }
        void operator()(History* one) const { history_end(one); }
    };
    std::unique_ptr<EditLine, End> edit_;
    std::unique_ptr<History, End> history_;
    std::string prompt_;
};

}  // namespace

NextLine terminal_lines() {
    const auto editor = std::make_shared<Editor>();
    return [editor](const std::string& prompt) { return editor->ask(prompt); };
}

bool at_terminal() { return ::isatty(STDIN_FILENO) != 0 && ::isatty(STDOUT_FILENO) != 0; }

}  // namespace kerfpacket::cli
