// A length as it is written, in three steps: the characters of a keyboard, words and figures, and what they come to.
#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>
#include <optional>
#include <utility>
#include <vector>

#include "measure/doubt.h"
#include "measure/fraction.h"
#include "measure/glyphs.h"

namespace kerfpacket::measure {
namespace {

enum class Suffix { none, feet, inches, millimetres, centimetres, metres };

struct Token {
    enum class Kind { digits, slash, dash, minus, unit, other };
    Kind kind = Kind::other;
    std::string_view text{};
    std::size_t at = 0;   ///< in the text as it was written
    bool spaced = false;  ///< a space stands before it
    Suffix suffix = Suffix::none;
};

bool is_letter(char c) { return std::isalpha(static_cast<unsigned char>(c)) != 0; }

/// "ft", "FT", "ft." and so on; a metre is a small m.
Suffix suffix_of(std::string_view word) {
    constexpr std::array<std::pair<std::string_view, Suffix>, 8> units{{{"ft", Suffix::feet},
                                                                        {"foot", Suffix::feet},
                                                                        {"feet", Suffix::feet},
                                                                        {"in", Suffix::inches},
                                                                        {"inch", Suffix::inches},
                                                                        {"inches", Suffix::inches},
                                                                        {"mm", Suffix::millimetres},
                                                                        {"cm", Suffix::centimetres}}};
    if (word == "m") return Suffix::metres;
    std::string small(word);
    std::transform(small.begin(), small.end(), small.begin(),
                   [](char c) { return static_cast<char>(std::tolower(static_cast<unsigned char>(c))); });
    const auto* const found =
        std::find_if(units.begin(), units.end(), [&](const auto& unit) { return unit.first == small; });
    return found == units.end() ? Suffix::none : found->second;
}

class Words {
public:
    explicit Words(const Plain& plain) : plain_(plain) {}

    std::vector<Token> take() {
        std::vector<Token> tokens;
        const std::string_view text = plain_.text;
        for (std::size_t i = 0; i < text.size();) {
            if (text[i] == ' ') {
                ++i;
                continue;
            }
            Token token = next(text.substr(i));
            token.at = plain_.at[i];
            token.spaced = i > 0 && text[i - 1] == ' ';
            i += token.text.size();
            tokens.push_back(token);
        }
        return tokens;
    }

private:
    static Token next(std::string_view rest) {
        const std::size_t digits = std::min(rest.find_first_not_of("0123456789.,"), rest.size());
        if (digits > 0) return {Token::Kind::digits, rest.substr(0, digits)};
        if (rest[0] == '/') return {Token::Kind::slash, rest.substr(0, 1)};
        if (rest[0] == '-') return {Token::Kind::dash, rest.substr(0, 1)};
        if (rest[0] == minus_sign) return {Token::Kind::minus, rest.substr(0, 1)};
        if (rest.starts_with("''")) return unit(rest.substr(0, 2), Suffix::inches);
        if (rest[0] == '"') return unit(rest.substr(0, 1), Suffix::inches);
        if (rest[0] == '\'') return unit(rest.substr(0, 1), Suffix::feet);
        return word(rest);
    }

    static Token word(std::string_view rest) {
        std::size_t size = 0;
        while (size < rest.size() && is_letter(rest[size])) ++size;
        const Suffix suffix = suffix_of(rest.substr(0, size));
        if (suffix == Suffix::none) return {Token::Kind::other, rest.substr(0, std::max<std::size_t>(size, 1))};
        // Abbreviations of feet and inches may have their point.
        const bool ours = suffix == Suffix::feet || suffix == Suffix::inches;
        const bool point = ours && size < rest.size() && rest[size] == '.';
        const bool goes_on =
            size + 1 < rest.size() && std::string_view(".,0123456789").find(rest[size + 1]) != std::string_view::npos;
        return unit(rest.substr(0, size + (point && !goes_on ? 1 : 0)), suffix);
    }

    static Token unit(std::string_view text, Suffix suffix) {
        Token token{Token::Kind::unit, text};
        token.suffix = suffix;
        return token;
    }

    const Plain& plain_;
};

using Result = tl::expected<Length, LengthError>;

/// Inches as feet and inches: "5 ft 10 in".
std::string feet_text(double inches) {
    const double feet = std::floor(inches / 12 + 1e-9);
    const double rest = std::abs(inches - feet * 12) < 1e-9 ? 0 : inches - feet * 12;
    return fixed(feet, 0) + " ft" + (rest == 0 ? "" : " " + figure_text(rest, false) + " in");
}

class LengthReader {
public:
    LengthReader(std::vector<Token> tokens, std::size_t end, Unit unit)
        : tokens_(std::move(tokens)), end_(end), unit_(unit) {}

    Result run() {
        if (done()) return wrong("the length is empty");
        const bool negative = take(Token::Kind::dash) || take(Token::Kind::minus);
        if (negative) sign_ = "-";
        const auto first = figure();
        if (!first) return tl::unexpected(first.error());
        const Suffix suffix = take_suffix();
        const bool feet_and_inches = suffix == Suffix::feet && !done() && next_of_inches();
        Result length = feet_and_inches ? with_inches(*first) : alone(*first, suffix);
        if (!length) return length;
        if (!done()) return wrong("did not expect this after the length");
        return negative ? -*length : *length;
    }

private:
    bool done() const { return next_ == tokens_.size(); }
    bool is(Token::Kind kind) const { return !done() && tokens_[next_].kind == kind; }
    std::size_t here() const { return done() ? end_ : tokens_[next_].at; }
    bool take(Token::Kind kind) {
        if (!is(kind)) return false;
        ++next_;
        return true;
    }
    Suffix take_suffix() { return take(Token::Kind::unit) ? tokens_[next_ - 1].suffix : Suffix::none; }
    bool next_of_inches() const { return is(Token::Kind::digits) || is(Token::Kind::dash) || is(Token::Kind::minus); }
    tl::unexpected<LengthError> wrong(std::string message, std::string hint = "") const {
        return tl::unexpected(LengthError{std::move(message), here(), std::move(hint)});
    }

    Digits digits() {
        if (!is(Token::Kind::digits)) return {"", here()};
        const Token& token = tokens_[next_++];
        return {std::string(token.text), token.at};
    }

    /// A dash that touches both of its neighbours joins them; one that does not may as well take away.
    bool loose() const {
        const Token& dash = tokens_[next_];
        const bool touches = next_ + 1 < tokens_.size() && !tokens_[next_ + 1].spaced && !dash.spaced;
        return dash.kind == Token::Kind::minus || !touches;
    }

    /// "2", "2.5", "1/2", "2-1/2" or "2 1/2", as it is written.
    tl::expected<Figure, LengthError> figure() {
        Figure figure;
        figure.whole = digits();
        if (!figure.whole.given()) return wrong("expected a number");
        if (is(Token::Kind::slash)) {
            figure.top = std::exchange(figure.whole, {});
            return bottom(std::move(figure));
        }
        if (is(Token::Kind::dash) || is(Token::Kind::minus)) {
            figure.join = loose() ? Join::loose_dash : Join::dash;
            ++next_;
        } else if (!is(Token::Kind::digits)) {
            return figure;
        }
        figure.top = digits();
        if (!figure.top.given()) return wrong("expected a fraction such as 1/2");
        if (!is(Token::Kind::slash))
            return wrong("expected a fraction such as 1/2",
                         "a number has no space in it, two lengths have a comma between them and quotes of their own");
        return bottom(std::move(figure));
    }

    tl::expected<Figure, LengthError> bottom(Figure figure) {
        const bool spaced = tokens_[next_].spaced;
        ++next_;
        if (!is(Token::Kind::digits)) return wrong("expected a number other than 0 under the fraction line");
        if (spaced || tokens_[next_].spaced)
            return wrong("a fraction has no space in it", "write it as in \"2-1/2 in\"");
        figure.bottom = digits();
        return figure;
    }

    Around around(std::string before, Suffix suffix) const {
        const bool bare_metric = suffix == Suffix::none && unit_ == Unit::millimetre;
        const bool millimetres = suffix == Suffix::millimetres || bare_metric;
        const bool metric = millimetres || suffix == Suffix::centimetres || suffix == Suffix::metres;
        constexpr std::array<const char*, 6> words{"", " ft", " in", " mm", " cm", " m"};
        return {std::move(before), words.at(static_cast<std::size_t>(suffix)), metric, millimetres};
    }

    Length in_unit(double value, Suffix suffix) const {
        switch (suffix) {
            case Suffix::feet: return Length::inches(value * 12);
            case Suffix::inches: return Length::inches(value);
            case Suffix::millimetres: return Length::mm(value);
            case Suffix::centimetres: return Length::mm(value * 10);
            case Suffix::metres: return Length::mm(value * 1000);
            case Suffix::none: break;
        }
        return unit_ == Unit::inch ? Length::inches(value) : Length::mm(value);
    }

    Result alone(const Figure& figure, Suffix suffix) const {
        if (auto found = doubt(figure, around(sign_, suffix))) return tl::unexpected(*std::move(found));
        if (suffix == Suffix::feet)
            if (auto found = feet_doubt(figure)) return tl::unexpected(*std::move(found));
        return in_unit(value_of(figure), suffix);
    }

    /// 4.5 ft: half a foot, or five inches behind the point.
    std::optional<LengthError> feet_doubt(const Figure& figure) const {
        const std::string& text = figure.whole.text;
        const std::size_t point = text.find('.');
        if (figure.fraction() || point == std::string::npos) return {};
        const std::string behind = text.substr(point + 1);
        if (behind.size() > 2 || behind.find_first_not_of('0') == std::string::npos) return {};
        const int inches = std::stoi(behind);
        if (inches >= 12) return {};
        const double feet = point == 0 ? 0 : std::stod(text.substr(0, point));
        return two_ways(figure.whole.at, in_quotes(feet_text(value_of(figure) * 12)),
                        in_quotes(feet_text(feet * 12 + inches)));
    }

    std::string in_quotes(const std::string& text) const { return "\"" + sign_ + text + "\""; }

    /// After feet come inches, whose unit may be left out: 6' 2 1/2. A dash may join them: 6'-2".
    Result with_inches(const Figure& feet) {
        const std::size_t at = here();
        const bool dash = is(Token::Kind::dash) || is(Token::Kind::minus);
        const bool apart = dash && loose();
        if (dash) ++next_;
        const auto inches = figure();
        if (!inches) return tl::unexpected(inches.error());
        const std::size_t unit_at = here();
        const Suffix suffix = take_suffix();
        if (suffix != Suffix::inches && suffix != Suffix::none)
            return tl::unexpected(LengthError{"only inches can follow feet", unit_at, ""});
        // "4 ft.2 in" may be an abbreviation's point.
        if (!inches->fraction() && inches->whole.text.starts_with('.'))
            return tl::unexpected(LengthError{
                "no figure stands before the point", inches->whole.at,
                "write " + in_quotes(feet.whole.text + " ft 0" + inches->whole.text + " in") + ", if that is meant"});
        if (auto found = doubt(feet, around(sign_, Suffix::feet))) return tl::unexpected(*std::move(found));
        const bool whole_feet = !feet.fraction() && feet.whole.text.find('.') == std::string::npos;
        const std::string before = sign_ + (whole_feet ? feet.whole.text : "0") + " ft ";
        if (auto found = doubt(*inches, {before, " in"})) return tl::unexpected(*std::move(found));
        const double base = value_of(feet) * 12, more = value_of(*inches);
        if (!whole_feet)
            return tl::unexpected(two_ways(feet.fraction() ? feet.top.at : feet.whole.at,
                                           in_quotes(feet_text(base + more)),
                                           in_quotes(feet_text(std::floor(value_of(feet)) * 12 + more))));
        if (more >= 12)
            return tl::unexpected(
                two_ways(at, in_quotes(feet_text(base + more)), in_quotes(feet_text(base + last_digit(*inches)))));
        if (apart)
            return tl::unexpected(
                two_ways(at, in_quotes(feet_text(base + more)), in_quotes(feet_text(std::max(base - more, 0.0)))));
        return Length::inches(base + more);
    }

    /// Inches of which a digit too many stands before the last one.
    static double last_digit(const Figure& inches) { return std::fmod(value_of(inches), 10); }

    std::vector<Token> tokens_;
    std::size_t next_ = 0;
    std::size_t end_;
    Unit unit_;
    std::string sign_;
};

}  // namespace

tl::expected<Length, LengthError> parse_length(std::string_view text, Unit unit) {
    const Plain plain = plain_characters(text);
    if (!plain.stranger.empty())
        return tl::unexpected(LengthError{"a length has no place for " + plain.stranger, plain.stopped, ""});
    return LengthReader(Words(plain).take(), text.size(), unit).run();
}

}  // namespace kerfpacket::measure
