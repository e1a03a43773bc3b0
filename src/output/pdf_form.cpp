#include "output/pdf_form.h"

#include <fmt/format.h>

#include "measure/require.h"
#include "output/pdf_form_face.h"
#include "output/pdf_text.h"

namespace kerfpacket::output {
namespace {

using geom::Rect;
using page::FieldKind;

// Flags of fields and annotations (ISO 32000-1, tables 221, 226, 228 and 165).
constexpr int read_only = 1, many_lines = 1 << 12, radio = 1 << 15;
constexpr int printed = 4, locked = 128;

constexpr const char* typed_in = "/DA(/KpSans 11 Tf 0 g)";

/// What stands there beforehand, so that a reader can tell it from what somebody filled in (table 220: DV).
std::string given(const std::string& value) { return "/V" + value + "/DV" + value; }

std::string annotation(const Rect& area, Ref page, int flags) {
    return fmt::format("/Type/Annot/Subtype/Widget/Rect{}/F {}/P {}", corners(area), flags, named(page));
}

}  // namespace

FormWriter::FormWriter(PdfFile& file, const page::Form& form) : file_(file), form_(form) {
    for (std::size_t i = 0; i < form.fields.size(); ++i) fields_.push_back(file.reserve());
}

void FormWriter::add_page(std::size_t number, Ref page, PageTree& tree, std::vector<Ref>& annotations) {
    for (std::size_t i = 0; i < form_.fields.size(); ++i)
        if (form_.fields[i].page == number) add(form_.fields[i], fields_[i], {page, tree, annotations});
}

void FormWriter::add(const page::FormField& field, Ref self, const Page& page) {
    std::string entries = "/T";
    add_literal(entries, field.name);
    if (!field.tip.empty()) entries += "/TU" + text_string(field.tip);
    if (field.kind == FieldKind::one_of) entries += boxes(field, self, page);
    else if (field.kind == FieldKind::hidden) {
        entries += fmt::format("/FT/Tx/Ff {}{}{}/AP<</N {}>>", read_only, given(text_string(field.value)), typed_in,
                               named(appearance({}, "q Q")));
        entries += annotation({}, page.self, printed + locked);
        page.annotations.push_back(self);
    } else {
        const Rect& area = field.places.front().area;
        if (field.kind == FieldKind::notes) entries += fmt::format("/Ff {}", many_lines);
        // Each its own appearance: some programs write what is typed into the stream that is there.
        entries +=
            fmt::format("/FT/Tx/MaxLen {}{}/AP<</N {}>>", field.most, typed_in, named(appearance(area, "/Tx BMC EMC")));
        entries += widget(self, area, field.node, field.tip, page);
    }
    file_.put(self, "<<" + entries + ">>");
}

/// The states are the job file's own words, in every language.
std::string FormWriter::boxes(const page::FormField& field, Ref self, const Page& page) {
    std::vector<Ref> kids;
    for (const page::FieldPlace& place : field.places) {
        const Ref box = kids.emplace_back(file_.reserve());
        file_.put(box,
                  fmt::format("<</Parent {}/TU{}/AP<</N{}>>/AS/{}/MK<</CA(4)>>/DA(/ZaDb 0 Tf 0 g){}>>", named(self),
                              text_string(place.tip), states(place), place.word == field.value ? place.word : "Off",
                              widget(box, place.area, field.node, place.tip, page)));
    }
    const std::string value = field.value.empty() ? "/Off" : "/" + field.value;
    return fmt::format("/FT/Btn/Ff {}{}/Kids{}", radio, given(value), list_of(kids));
}

std::string FormWriter::states(const page::FieldPlace& place) {
    const double side = place.area.width().points();
    const std::string tick = fmt::format("1.4 w 1 J 1 j {:.3f} {:.3f} m {:.3f} {:.3f} l {:.3f} {:.3f} l S", side * 0.2,
                                         side * 0.5, side * 0.42, side * 0.24, side * 0.82, side * 0.82);
    // Boxes are ticked by choosing a state, so one stream may serve all boxes of a size.
    return fmt::format("<</{} {}/Off {}>>", place.word, named(shared(place.area, tick)),
                       named(shared(place.area, "q Q")));
}

Ref FormWriter::shared(const Rect& area, const std::string& content) {
    const std::string size = fmt::format("{:.3f} {:.3f} ", area.width().points(), area.height().points());
    const auto [found, added] = streams_.try_emplace(size + content);
    if (added) found->second = appearance(area, content);
    return found->second;
}

Ref FormWriter::appearance(const Rect& area, const std::string& content) {
    return file_.add_bare_stream(
        "/Type/XObject/Subtype/Form/Resources<<>>/BBox" + corners({{}, {area.width(), area.height()}}), content);
}

std::string FormWriter::widget(Ref self, const Rect& area, std::size_t node, const std::string& told,
                               const Page& page) {
    page.annotations.push_back(self);
    return annotation(area, page.self, printed) +
           fmt::format("/StructParent {}", page.tree.add_field(node, self, told));
}

Ref FormWriter::write(const std::string& face) {
    // Viewers that draw ticks themselves look for the second font under this name.
    const Ref ticks = file_.add("<</Type/Font/Subtype/Type1/BaseFont/ZapfDingbats>>");
    return file_.add(fmt::format("<</Fields{}/DA(/KpSans 0 Tf 0 g)/DR<</Font<</KpSans {}/ZaDb {}>>>>>>",
                                 list_of(fields_), named(form_face(file_, face)), named(ticks)));
}

}  // namespace kerfpacket::output
