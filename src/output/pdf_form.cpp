#include "output/pdf_form.h"

#include <map>

#include <fmt/format.h>

#include "measure/require.h"
#include "output/pdf_form_face.h"

namespace kerfpacket::output {
namespace {

using Object = QPDFObjectHandle;
using geom::Rect;
using page::FieldKind;

// Flags of fields and annotations (ISO 32000-1, tables 221, 226, 228 and 165).
constexpr long long read_only = 1, many_lines = 1LL << 12U, radio = 1LL << 15U;
constexpr long long printed = 4, locked = 128;

constexpr const char* typed_in = "/KpSans 11 Tf 0 g";

std::string corners(const Rect& area) {
    return fmt::format("[{:.3f} {:.3f} {:.3f} {:.3f}]", area.low.x.points(), area.low.y.points(), area.high.x.points(),
                       area.high.y.points());
}

class FormWriter {
public:
    FormWriter(QPDF& pdf, const page::Document& document, const std::vector<std::vector<Object>>& elements)
        : pdf_(pdf), document_(document), elements_(elements), pages_(pdf.getAllPages()) {
        for (Object& page : pages_)
            if (!page.getKey("/Annots").isArray()) page.replaceKey("/Annots", Object::newArray());
    }

    void add(const page::FormField& field) {
        Object made = pdf_.makeIndirectObject(Object::newDictionary());
        made.replaceKey("/T", Object::newString(field.name));
        if (!field.tip.empty()) made.replaceKey("/TU", Object::newUnicodeString(field.tip));
        switch (field.kind) {
            case FieldKind::line:
            case FieldKind::notes: text(made, field); break;
            case FieldKind::one_of: boxes(made, field); break;
            case FieldKind::hidden: marker(made, field); break;
        }
        fields_.appendItem(made);
    }

    void finish(const std::string& face) {
        Object fonts = Object::newDictionary({{"/KpSans", form_face(pdf_, face)}});
        // Viewers that draw ticks themselves look for it under this name.
        fonts.replaceKey("/ZaDb", pdf_.makeIndirectObject(
                                      Object::parse("<< /Type /Font /Subtype /Type1 /BaseFont /ZapfDingbats >>")));
        Object form = Object::newDictionary({{"/Fields", fields_}, {"/DA", Object::newString("/KpSans 0 Tf 0 g")}});
        form.replaceKey("/DR", Object::newDictionary({{"/Font", fonts}}));
        pdf_.getRoot().replaceKey("/AcroForm", pdf_.makeIndirectObject(form));
        for (Object& page : pages_) page.replaceKey("/Tabs", Object::newName("/S"));
    }

private:
    void text(Object made, const page::FormField& field) {
        const Rect& area = field.places.front().area;
        made.replaceKey("/FT", Object::newName("/Tx"));
        if (field.kind == FieldKind::notes) made.replaceKey("/Ff", Object::newInteger(many_lines));
        made.replaceKey("/MaxLen", Object::newInteger(field.most));
        made.replaceKey("/DA", Object::newString(typed_in));
        // Each its own: some programs write what is typed into the stream that is there.
        made.replaceKey("/AP", Object::newDictionary({{"/N", appearance(area, "/Tx BMC EMC")}}));
        widget(made, area, field, field.tip);
    }

    void marker(Object made, const page::FormField& field) {
        made.replaceKey("/FT", Object::newName("/Tx"));
        made.replaceKey("/Ff", Object::newInteger(read_only));
        given(made, Object::newUnicodeString(field.value));
        made.replaceKey("/DA", Object::newString(typed_in));
        made.replaceKey("/AP", Object::newDictionary({{"/N", appearance({}, "q Q")}}));
        annotation(made, {}, field.page, printed + locked);
    }

    /// The states are the job file's own words, in every language.
    void boxes(Object made, const page::FormField& field) {
        made.replaceKey("/FT", Object::newName("/Btn"));
        made.replaceKey("/Ff", Object::newInteger(radio));
        given(made, Object::newName(field.value.empty() ? "/Off" : "/" + field.value));
        Object kids = Object::newArray();
        for (const page::FieldPlace& place : field.places) {
            Object box = pdf_.makeIndirectObject(Object::newDictionary({{"/Parent", made}}));
            box.replaceKey("/TU", Object::newUnicodeString(place.tip));
            box.replaceKey("/AP", Object::newDictionary({{"/N", states(place)}}));
            box.replaceKey("/AS", Object::newName(place.word == field.value ? "/" + place.word : "/Off"));
            box.replaceKey("/MK", Object::parse("<< /CA (4) >>"));
            box.replaceKey("/DA", Object::newString("/ZaDb 0 Tf 0 g"));
            widget(box, place.area, field, place.tip);
            kids.appendItem(box);
        }
        made.replaceKey("/Kids", kids);
    }

    /// What stands there beforehand, so that a reader can tell it from what somebody filled in (table 220: DV).
    static void given(Object made, const Object& value) {
        made.replaceKey("/V", value);
        made.replaceKey("/DV", value);
    }

    Object states(const page::FieldPlace& place) {
        const double side = place.area.width().points();
        const std::string tick =
            fmt::format("1.4 w 1 J 1 j {:.3f} {:.3f} m {:.3f} {:.3f} l {:.3f} {:.3f} l S", side * 0.2, side * 0.5,
                        side * 0.42, side * 0.24, side * 0.82, side * 0.82);
        // Boxes are ticked by choosing a state, so one stream may serve all boxes of a size.
        return Object::newDictionary(
            {{"/" + place.word, shared(place.area, tick)}, {"/Off", shared(place.area, "q Q")}});
    }

    Object shared(const Rect& area, const std::string& content) {
        const std::string size = fmt::format("{:.3f} {:.3f} ", area.width().points(), area.height().points());
        const auto [found, added] = streams_.try_emplace(size + content);
        if (added) found->second = appearance(area, content);
        return found->second;
    }

    Object appearance(const Rect& area, const std::string& content) {
        Object stream = pdf_.newStream(content);
        Object dictionary = stream.getDict();
        dictionary.replaceKey("/Type", Object::newName("/XObject"));
        dictionary.replaceKey("/Subtype", Object::newName("/Form"));
        dictionary.replaceKey("/Resources", Object::newDictionary());
        dictionary.replaceKey("/BBox", Object::parse(corners({{}, {area.width(), area.height()}})));
        return stream;
    }

    void annotation(Object one, const Rect& area, std::size_t page, long long flags) {
        one.replaceKey("/Type", Object::newName("/Annot"));
        one.replaceKey("/Subtype", Object::newName("/Widget"));
        one.replaceKey("/Rect", Object::parse(corners(area)));
        one.replaceKey("/F", Object::newInteger(flags));
        one.replaceKey("/P", pages_.at(page));
        pages_.at(page).getKey("/Annots").appendItem(one);
    }

    void widget(Object one, const Rect& area, const page::FormField& field, const std::string& told) {
        annotation(one, area, field.page, printed);
        Object object = Object::parse("<< /Type /OBJR >>");
        object.replaceKey("/Obj", one);
        object.replaceKey("/Pg", pages_.at(field.page));
        Object element = pdf_.makeIndirectObject(Object::newDictionary(
            {{"/S", Object::newName("/Form")}, {"/K", object}, {"/Alt", Object::newUnicodeString(told)}}));
        place(element, field);
        Object tree = pdf_.getRoot().getKey("/StructTreeRoot");
        Object next = tree.getKey("/ParentTreeNextKey");
        one.replaceKey("/StructParent", next);
        Object numbers = tree.getKey("/ParentTree").getKey("/Nums");
        numbers.appendItem(next);
        numbers.appendItem(element);
        tree.replaceKey("/ParentTreeNextKey", Object::newInteger(next.getIntValue() + 1));
    }

    void place(Object element, const page::FormField& field) {
        const auto& structure = document_.pages.at(field.page).structure;
        const bool in_figure = structure.at(field.node).tag == page::Tag::figure;
        Object part = elements_.at(field.page).at(field.node);
        Object above = in_figure ? elements_.at(field.page).at(structure.at(field.node).parent) : part;
        measure::require(above.isInitialized(), "a field has a label, or a cell, or a page");
        element.replaceKey("/P", above);
        Object kids = above.getKey("/K");
        if (!kids.isArray()) kids = kids.isNull() ? Object::newArray() : Object::newArray({kids});
        above.replaceKey("/K", kids);
        kids = above.getKey("/K");
        int at = kids.getArrayNItems();
        if (in_figure) {
            for (at = 0; !kids.getArrayItem(at).isSameObjectAs(part);) ++at;
            at += 1 + behind_[part.getObjGen()]++;
        }
        if (at < kids.getArrayNItems()) kids.insertItem(at, element);
        else kids.appendItem(element);
    }

    QPDF& pdf_;
    const page::Document& document_;
    const std::vector<std::vector<Object>>& elements_;
    std::vector<Object> pages_;
    Object fields_ = Object::newArray();
    std::map<std::string, Object> streams_;
    std::map<QPDFObjGen, int> behind_;  ///< of each figure: how many of its fields stand behind it
};

}  // namespace

void add_form(QPDF& pdf, const page::Document& document, const page::Form& form, const std::string& face,
              const std::vector<std::vector<Object>>& elements) {
    FormWriter writer(pdf, document, elements);
    for (const page::FormField& field : form.fields) writer.add(field);
    writer.finish(face);
}

}  // namespace kerfpacket::output
