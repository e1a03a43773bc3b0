#pragma once
// Draws the items of one page through libharu.

#include <optional>
#include <vector>

#include "output/haru.h"
#include "page/placing.h"

namespace kerfpacket::output {

using page::Point;

/// A page being drawn. It knows what pen, ink and font are set and says each again only when it changes; lines of one
/// pen become one stroke, lines of text one text object. Call `finish` after the last item.
class HaruPage {
public:
    HaruPage(const HaruDocument& document, HaruFonts& fonts, HPDF_Page page, const page::Page& content)
        : document_(document), fonts_(fonts), page_(page), content_(content) {}

    /// What an item is read with: a part of the page, or nothing for an artifact.
    using Reader = std::optional<std::size_t>;

    void draw(const page::PathItem& item, Reader reader);
    /// Throws fonts::MissingCharacter.
    void draw(const page::TextItem& item, Reader reader);
    void draw(const page::CodeItem& item, Reader reader);
    /// Ends what is still open.
    void finish();
    /// The part of the page of each marked run, by its number (MCID).
    const std::vector<std::size_t>& marks() const { return marks_; }

private:
    /// What the next item may go on with.
    enum class Open { nothing, stroke, text };
    struct Pen {
        HPDF_REAL width = 1;
        page::Dash dash = page::Dash::solid;
        page::Ink ink = page::Ink::black;
        bool operator==(const Pen&) const = default;
    };

    /// A run of content that is read with one part of the page. Begun inside a text object it ends there.
    struct Run {
        Reader reader;
        bool in_text = false;
    };

    /// Ends the open path or text, and a run begun in it.
    void end_object();
    void end_run();
    /// Ends the run that is open unless it is of this reader; `in_text`: the next one begins inside the text object.
    void leave_run(Reader reader, bool in_text);
    /// Lines that are read as one part are words apart, not one long word (ISO 32000-1, 14.8.2.5); a figure is told in
    /// other words.
    void space_after_last(Reader reader);
    void enter_run(Reader reader, bool in_text);
    void set_pen(const Pen& pen);
    void set_fill(page::Ink ink);
    void set_font(HPDF_Font font, Length size);
    void begin_text_at(Point start, geom::Angle angle);
    Point written(Point point) const { return page::corrected(content_, point); }
    void trace(const geom::Path& path);
    void trace(const geom::Segment& segment);

    const HaruDocument& document_;
    HaruFonts& fonts_;
    HPDF_Page page_;
    const page::Page& content_;
    Open open_ = Open::nothing;
    std::optional<Run> run_;
    std::vector<std::size_t> marks_;
    double text_x_ = 0;  ///< where the open text object last stood, in points
    double text_y_ = 0;
    Pen pen_;  ///< as a PDF page starts (ISO 32000-1, table 52)
    page::Ink fill_ink_ = page::Ink::black;
    HPDF_Font font_ = nullptr;
    HPDF_REAL font_size_ = 0;
};

}  // namespace kerfpacket::output
