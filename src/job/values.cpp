#include "job/values.h"

#include <algorithm>

#include "measure/fraction.h"

namespace kerfpacket::job {
namespace {

std::string in_quotes(std::string_view words) {
    std::string out = "\"";
    for (const char c : words) {
        if (c == '"' || c == '\\') out += '\\';
        out += c;
    }
    return out + "\"";
}

constexpr int places = 9;

struct Write {
    /// Tenths of a nanometre are noise of the arithmetic; a millionth of a millimetre is far below any tape.
    std::string operator()(Length value) const { return in_quotes(measure::mm_text(value, 6) + " mm"); }
    std::string operator()(Angle value) const { return measure::fixed(value.degrees(), places); }
    std::string operator()(Figure figure) const { return measure::fixed(figure.value, figure.whole ? 0 : places); }
    std::string operator()(Percent percent) const {
        return in_quotes(measure::fixed(percent.fraction * 100, places) + " %");
    }
    std::string operator()(const Words& words) const { return in_quotes(words.text); }
    std::string operator()(const MaterialName& material) const { return in_quotes(material.name); }
    std::string operator()(const Day& day) const { return day.text; }
    std::string operator()(Flag /*true*/) const { return "true"; }
};

}  // namespace

std::string canonical(const Scalar& scalar) { return std::visit(Write{}, scalar); }

std::string canonical(const Element& element) {
    if (element.size() == 1) return canonical(element.front());
    std::string list = "[";
    for (const Scalar& scalar : element) list += (list.size() > 1 ? ", " : "") + canonical(scalar);
    return list + "]";
}

bool Value::same_value(const Value& other) const {
    return std::equal(elements.begin(), elements.end(), other.elements.begin(), other.elements.end(),
                      [](const Element& a, const Element& b) { return canonical(a) == canonical(b); });
}

}  // namespace kerfpacket::job
