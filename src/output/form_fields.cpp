#include "output/form_fields.h"

#include <algorithm>

#include "output/capped.h"

namespace kerfpacket::output {
namespace {

using Object = QPDFObjectHandle;

constexpr int most_objects = 20'000, deepest = 8, most_pages = 100;
constexpr std::size_t most_name = 200, most_text = 20'000;

constexpr const char* too_much = "is no field sheet: it holds more than any form";

std::string short_enough(std::string text, std::size_t most) {
    if (text.size() > most) throw Refusal(too_much);
    return text;
}

std::string unpacked(Object stream) {
    Capped sink(most_text);
    bool whole = false;
    if (!stream.pipeStreamData(&sink, &whole, 0, qpdf_dl_generalized, true) || sink.over()) throw Refusal(too_much);
    // The bytes are those of a text string, in one of its codes (ISO 32000-1, 7.9.2.2).
    return Object::newString(sink.take()).getUTF8Value();
}

/// A value may be a string, a name, a stream (of long texts), or a list of one.
std::string text_of(Object value, int depth = 0) {
    if (value.isString()) return short_enough(value.getUTF8Value(), most_text);
    if (value.isName()) return short_enough(value.getName().substr(1), most_name);
    if (value.isStream()) return unpacked(value);
    if (value.isArray() && value.getArrayNItems() == 1 && depth == 0) return text_of(value.getArrayItem(0), 1);
    return {};
}

/// Of a button; some programs write "/Yes" into a string.
std::string state_of(const Object& value) {
    std::string state = text_of(value);
    if (state.starts_with('/')) state.erase(0, 1);
    return state == "Off" ? "" : state;
}

std::vector<Object> entries(Object list) {
    std::vector<Object> all;
    const int count = list.isArray() ? list.getArrayNItems() : 0;
    if (count > most_objects) throw Refusal(too_much);
    all.reserve(static_cast<std::size_t>(count));
    for (int i = 0; i < count; ++i) all.push_back(list.getArrayItem(i));
    return all;
}

[[noreturn]] void two_ticked(const std::string& one, const std::string& other) {
    throw Refusal("has two boxes ticked where one is meant: " + one + " and " + other);
}

/// What is ticked. Some programs tell it of the field, some of its boxes; where they tell two things, nobody knows.
std::string ticked(const Object& one, const std::string& value, const std::vector<Object>& kids) {
    std::string shown;
    std::vector<Object> boxes = kids;
    boxes.push_back(one);
    for (Object& box : boxes) {
        if (!box.isDictionary()) continue;
        const std::string state = state_of(box.getKey("/AS"));
        if (!state.empty() && !shown.empty() && state != shown) two_ticked(shown, state);
        if (!state.empty()) shown = state;
    }
    if (!shown.empty() && !value.empty() && shown != value) two_ticked(shown, value);
    return shown.empty() ? value : shown;
}

/// The field at the top of what a widget belongs to.
Object top_of(Object widget) {
    for (int up = 0; up < deepest && widget.getKey("/Parent").isDictionary(); ++up) widget = widget.getKey("/Parent");
    return widget;
}

}  // namespace

void FormFields::count() {
    if (++seen_ > most_objects) throw Refusal(too_much);
}

FormFields::FormFields(QPDF& pdf) {
    Object root = pdf.getRoot();
    Object form = root.isDictionary() ? root.getKey("/AcroForm") : Object::newNull();
    if (form.isDictionary()) walk(form.getKey("/Fields"), {"", "", Object::newNull(), Object::newNull()}, 0);
    look_at_pages(pdf);
}

void FormFields::look_at_pages(QPDF& pdf) {
    const bool forgotten = fields_.empty();
    int pages = 0;
    for (Object page : pdf.getAllPages()) {
        if (++pages > most_pages) return;
        std::vector<Object> tops;
        std::set<QPDFObjGen> there;
        for (Object& annotation : entries(page.getKey("/Annots"))) {
            count();
            if (!annotation.isDictionary()) continue;
            Object kind = annotation.getKey("/Subtype");
            drawn_over_ = drawn_over_ || kind.isNameAndEquals("/Ink") || kind.isNameAndEquals("/FreeText");
            if (!forgotten || !kind.isNameAndEquals("/Widget")) continue;
            const Object top = top_of(annotation);
            if (!Object(top).isIndirect() || there.insert(top.getObjGen()).second) tops.push_back(top);
        }
        walk(Object::newArray(tops), {"", "", Object::newNull(), Object::newNull()}, 0);
    }
}

void FormFields::walk(const Object& list, const Above& above, int depth) {
    if (depth > deepest) throw Refusal(too_much);
    for (Object& one : entries(list)) {
        count();
        if (!one.isDictionary()) continue;
        if (one.isIndirect() && !met_.insert(one.getObjGen()).second) continue;
        field(one, above, depth);
    }
}

void FormFields::field(Object one, const Above& above, int depth) {
    Above here = above;
    const auto take = [&](const char* key, Object& into) {
        if (Object own = one.getKey(key); !own.isNull()) into = own;
    };
    take("/FT", here.type);
    take("/V", here.value);
    if (Object name = one.getKey("/T"); name.isString())
        here.name += (above.name.empty() ? "" : ".") + short_enough(name.getUTF8Value(), most_name);
    if (Object tip = one.getKey("/TU"); tip.isString()) here.tip = short_enough(tip.getUTF8Value(), most_text);
    const std::vector<Object> kids = entries(one.getKey("/Kids"));
    const auto is_field = [](Object kid) { return kid.isDictionary() && kid.getKey("/T").isString(); };
    if (std::any_of(kids.begin(), kids.end(), is_field)) return walk(one.getKey("/Kids"), here, depth + 1);
    const bool button = here.type.isNameAndEquals("/Btn");
    const auto said = [&](const Object& of) { return button ? state_of(of) : text_of(of); };
    std::string value;
    // A program that tells a widget leaves what the field above it said before.
    for (Object kid : kids)
        if (value.empty() && kid.isDictionary()) value = said(kid.getKey("/V"));
    if (value.empty()) value = said(here.value);
    if (button) value = ticked(one, value, kids);
    fields_.push_back({here.name, here.tip, value});
}

}  // namespace kerfpacket::output
