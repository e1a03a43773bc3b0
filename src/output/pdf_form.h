#pragma once
// Fields laid over the pages (ISO 32000-1, 12.7): what is paper is a form too.

#include <map>
#include <string>
#include <vector>

#include "output/pdf_structure.h"
#include "page/form.h"

namespace kerfpacket::output {

/// Each field is a widget on its page and an element of the structure, in the part that its label is read with
/// (behind it, where that is a figure, whose parts nobody reads). No script, no action; nothing is left for a viewer to
/// draw first.
class FormWriter {
public:
    FormWriter(PdfFile& file, const page::Form& form);

    /// Adds the fields of a page, and what stands for them there to its annotations.
    void add_page(std::size_t number, Ref page, PageTree& tree, std::vector<Ref>& annotations);
    /// Writes the form itself; `face` is the TrueType file that is typed in.
    Ref write(const std::string& face);

private:
    /// The page that fields are added to.
    struct Page {
        Ref self;
        PageTree& tree;
        std::vector<Ref>& annotations;
    };

    void add(const page::FormField& field, Ref self, const Page& page);
    std::string boxes(const page::FormField& field, Ref self, const Page& page);
    std::string states(const page::FieldPlace& place);
    Ref shared(const geom::Rect& area, const std::string& content);
    Ref appearance(const geom::Rect& area, const std::string& content);
    static std::string widget(Ref self, const geom::Rect& area, std::size_t node, const std::string& told,
                              const Page& page);

    PdfFile& file_;
    const page::Form& form_;
    std::vector<Ref> fields_;
    std::map<std::string, Ref> streams_;
};

}  // namespace kerfpacket::output
