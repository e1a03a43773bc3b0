#pragma once
// What was asked and answered so far. Everything that a talk knows is worked out from this list.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace kerfpacket::cli {

struct Question;

struct Answer {
    const Question* question = nullptr;
    std::string value;    ///< as the job file takes it; empty for what is left out
    std::string typed{};  ///< as it stands on a filled field sheet; empty where it was answered here
};

class Answers {
public:
    const std::vector<Answer>& all() const { return all_; }
    bool empty() const { return all_.empty(); }
    void add(Answer answer) { all_.push_back(std::move(answer)); }
    /// Takes the last one away again; there must be one.
    Answer take_back();

    /// The value of the last answer to a question of this name within the piece that is being asked about, or of the
    /// whole job; empty where it was left out or not asked.
    std::string_view of_piece(std::string_view name) const;
    /// Whether it was asked at all, of any piece.
    bool asked(std::string_view name) const;
    /// The value of the last one of any piece.
    std::optional<std::string_view> last(std::string_view name) const;
    /// The same answers with the value of that question of this piece put in place of what it was.
    Answers with(std::string_view name, std::string value) const;
    /// How many openings and walls were begun.
    int pieces() const;
    /// Whether the piece that is being asked about is an opening, and of one of these shapes.
    bool opening() const { return of_piece("kind") == "opening"; }
    bool stair() const { return of_piece("kind") == "stair"; }
    bool wall() const { return of_piece("kind") == "wall" || stair(); }

private:
    std::vector<Answer> all_;
};

}  // namespace kerfpacket::cli
