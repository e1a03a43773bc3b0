#include "cli/start/answers.h"

#include <algorithm>

#include "cli/start/questions.h"
#include "measure/require.h"

namespace kerfpacket::cli {
namespace {

bool begins_piece(const Answer& answer) { return answer.question->name == "kind"; }

}  // namespace

Answer Answers::take_back() {
    measure::require(!all_.empty(), "there is an answer to take back");
    Answer last = std::move(all_.back());
    all_.pop_back();
    return last;
}

std::string_view Answers::of_piece(std::string_view name) const {
    bool here = true;
    for (std::size_t i = all_.size(); i-- > 0;) {
        const bool whole_job = !all_[i].question->of_a_piece();
        if (all_[i].question->name == name && (here || whole_job)) return all_[i].value;
        if (begins_piece(all_[i])) here = false;
    }
    return {};
}

bool Answers::asked(std::string_view name) const { return last(name).has_value(); }

std::optional<std::string_view> Answers::last(std::string_view name) const {
    const auto found =
        std::find_if(all_.rbegin(), all_.rend(), [&](const Answer& one) { return one.question->name == name; });
    return found == all_.rend() ? std::nullopt : std::optional<std::string_view>(found->value);
}

Answers Answers::with(std::string_view name, std::string value) const {
    Answers changed = *this;
    const auto found = std::find_if(changed.all_.rbegin(), changed.all_.rend(),
                                    [&](const Answer& one) { return one.question->name == name; });
    measure::require(found != changed.all_.rend(), "only what was answered is changed");
    found->value = std::move(value);
    return changed;
}

int Answers::pieces() const {
    return static_cast<int>(std::count_if(
        all_.begin(), all_.end(), [](const Answer& answer) { return begins_piece(answer) && answer.value != "done"; }));
}

}  // namespace kerfpacket::cli
