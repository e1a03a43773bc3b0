#include "output/haru_page.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <string>
#include <vector>

#include <fmt/format.h>

#include "measure/require.h"
#include "output/dash.h"
#include "output/haru_marks.h"
#include "output/pdf_structure.h"
#include "output/win_ansi.h"

namespace kerfpacket::output {
namespace {

#if HPDF_VERSION_ID >= 20400
using DashLength = HPDF_REAL;
using DashPhase = HPDF_REAL;
#else
using DashLength = HPDF_UINT16;
using DashPhase = HPDF_UINT;
#endif

HPDF_REAL grey(page::Ink ink) { return ink == page::Ink::black ? 0.0F : 1.0F; }

/// True when the path goes round its own bounds and does nothing else.
bool is_upright_rectangle(const geom::Path& path) {
    const auto& sides = path.segments();
    return path.closed() && sides.size() == 4 && std::all_of(sides.begin(), sides.end(), [](const geom::Segment& s) {
               return s.is_line() && (s.from.x == s.to.x || s.from.y == s.to.y);
           });
}

}  // namespace

void HaruPage::draw(const page::PathItem& item, Reader reader) {
    const Pen pen{haru_points(item.width), item.dash, item.ink};
    const bool stroked = item.width > Length{};
    const bool goes_on =
        open_ == Open::stroke && stroked && !item.filled && pen == pen_ && run_ && run_->reader == reader;
    if (!goes_on) end_object();
    leave_run(reader, false);
    enter_run(reader, false);
    if (stroked) set_pen(pen);
    if (item.filled) set_fill(item.ink);
    trace(item.path);
    if (stroked && item.filled) HPDF_Page_FillStroke(page_);
    else if (stroked) open_ = Open::stroke;
    else if (item.filled) HPDF_Page_Fill(page_);  // each alone: areas in one path can cut holes in each other
    else HPDF_Page_EndPath(page_);
    document_.check("drawing a line");
}

void HaruPage::draw(const page::TextItem& item, Reader reader) {
    if (item.text.empty()) return;
    fonts_.faces().width(item.face, item.text, item.size);  // throws for what the face cannot print
    const std::optional<std::string> short_text = win_ansi(item.text);
    const bool upright = item.angle == geom::Angle{};
    if (open_ != Open::text || !upright) end_object();
    leave_run(reader, upright);
    if (upright) space_after_last(reader);
    set_fill(item.ink);
    set_font(fonts_.get(item.face, short_text ? Coding::win_ansi : Coding::unicode), item.size);
    const double back = item.align == page::Align::left ? 0 : item.align == page::Align::centre ? 0.5 : 1;
    if (!upright) enter_run(reader, false);
    begin_text_at(written(item.anchor) - geom::Direction::at(item.angle) * (item.advance * back), item.angle);
    enter_run(reader, upright);
    HPDF_Page_ShowText(page_, short_text.value_or(item.text).c_str());
    document_.check("setting a line of text");
    if (!upright) end_object();
}

/// Not a picture, which many a reader smooths: one area of rectangles, the dark runs of each row, in units of a cell.
void HaruPage::draw(const page::CodeItem& item, Reader reader) {
    end_object();
    leave_run(reader, false);
    enter_run(reader, false);
    set_fill(page::Ink::black);
    const Point low = written(item.area.low);
    const Point high = written(item.area.high);
    const auto side = static_cast<double>(item.side);
    HPDF_Page_GSave(page_);
    HPDF_Page_Concat(page_, static_cast<HPDF_REAL>((high.x - low.x).points() / side), 0, 0,
                     static_cast<HPDF_REAL>((high.y - low.y).points() / side), haru_points(low.x), haru_points(low.y));
    for (std::size_t i = 0; i < item.dark.size();) {
        const std::size_t rows = i / item.side + 1;  // down to this one
        std::size_t end = i;
        while (end < rows * item.side && item.dark[end]) ++end;
        if (end > i)
            HPDF_Page_Rectangle(page_, static_cast<HPDF_REAL>(i % item.side), static_cast<HPDF_REAL>(item.side - rows),
                                static_cast<HPDF_REAL>(end - i), 1);
        i = std::max(end, i + 1);
    }
    HPDF_Page_Fill(page_);
    HPDF_Page_GRestore(page_);
    document_.check("drawing a code");
}

void HaruPage::finish() {
    end_object();
    end_run();
    document_.check("drawing a page");
}

void HaruPage::end_object() {
    if (open_ == Open::stroke) HPDF_Page_Stroke(page_);
    if (open_ == Open::text) {
        if (run_ && run_->in_text) end_run();
        HPDF_Page_EndText(page_);
    }
    open_ = Open::nothing;
    document_.check("drawing a page");
}

void HaruPage::end_run() {
    if (run_) write_operators(page_, "EMC\n");
    run_.reset();
}

void HaruPage::leave_run(Reader reader, bool in_text) {
    if (!run_ || run_->reader == reader) return;
    if (!run_->in_text || !in_text) end_object();
    end_run();
}

void HaruPage::space_after_last(Reader reader) {
    if (!run_ || !reader || open_ != Open::text || content_.structure.at(*reader).tag == page::Tag::figure) return;
    HPDF_Page_ShowText(page_, " ");
}

void HaruPage::enter_run(Reader reader, bool in_text) {
    if (run_) return;
    if (reader) {
        write_operators(page_, fmt::format("/{} <</MCID {}>>BDC\n", structure_type(content_.structure.at(*reader).tag),
                                           marks_.size()));
        marks_.push_back(*reader);
    } else {
        write_operators(page_, "/Artifact BMC\n");
    }
    run_ = Run{reader, in_text};
}

void HaruPage::begin_text_at(Point start, geom::Angle angle) {
    if (open_ == Open::nothing) {
        HPDF_Page_BeginText(page_);
        open_ = Open::text;
        text_x_ = text_y_ = 0;
    }
    const double x = rounded_points(start.x);
    const double y = rounded_points(start.y);
    if (angle == geom::Angle{}) {
        // A move from the last line's start: rows and columns of text repeat the same few moves.
        HPDF_Page_MoveTextPos(page_, static_cast<HPDF_REAL>(x - text_x_), static_cast<HPDF_REAL>(y - text_y_));
    } else {
        const auto c = static_cast<HPDF_REAL>(std::cos(angle.radians()));
        const auto s = static_cast<HPDF_REAL>(std::sin(angle.radians()));
        HPDF_Page_SetTextMatrix(page_, c, s, -s, c, static_cast<HPDF_REAL>(x), static_cast<HPDF_REAL>(y));
    }
    text_x_ = x;
    text_y_ = y;
}

void HaruPage::set_pen(const Pen& pen) {
    if (pen.width != pen_.width) HPDF_Page_SetLineWidth(page_, pen.width);
    if (pen.dash != pen_.dash) {
        const std::vector<int> lengths = dash_pattern(pen.dash);
        const std::vector<DashLength> pattern(lengths.begin(), lengths.end());
        HPDF_Page_SetDash(page_, pattern.data(), static_cast<HPDF_UINT>(pattern.size()), DashPhase{0});
    }
    if (pen.ink != pen_.ink) HPDF_Page_SetGrayStroke(page_, grey(pen.ink));
    pen_ = pen;
    document_.check("choosing a pen");
}

void HaruPage::set_fill(page::Ink ink) {
    if (ink != fill_ink_) HPDF_Page_SetGrayFill(page_, grey(fill_ink_ = ink));
    document_.check("choosing an ink");
}

void HaruPage::set_font(HPDF_Font font, Length size) {
    const HPDF_REAL points = haru_points(size);
    if (font == font_ && points == font_size_) return;
    HPDF_Page_SetFontAndSize(page_, font_ = font, font_size_ = points);
    document_.check("choosing a font");
}

void HaruPage::trace(const geom::Path& path) {
    measure::require(!path.empty(), "a path to draw has segments");
    if (is_upright_rectangle(path)) {
        const geom::Rect box{written(path.bounds().low), written(path.bounds().high)};
        const double x = rounded_points(box.low.x);
        const double y = rounded_points(box.low.y);
        HPDF_Page_Rectangle(page_, static_cast<HPDF_REAL>(x), static_cast<HPDF_REAL>(y),
                            static_cast<HPDF_REAL>(rounded_points(box.high.x) - x),
                            static_cast<HPDF_REAL>(rounded_points(box.high.y) - y));
        return;
    }
    const Point start = written(path.start());
    HPDF_Page_MoveTo(page_, haru_points(start.x), haru_points(start.y));
    for (const geom::Segment& segment : path.segments()) trace(segment);
    if (path.closed()) HPDF_Page_ClosePath(page_);
}

void HaruPage::trace(const geom::Segment& segment) {
    if (segment.is_line()) {
        const Point to = written(segment.to);
        HPDF_Page_LineTo(page_, haru_points(to.x), haru_points(to.y));
        return;
    }
    for (std::array<Point, 3> curve : geom::cubic_pieces(segment)) {
        for (Point& point : curve) point = written(point);
        const auto& [c1, c2, end] = curve;
        HPDF_Page_CurveTo(page_, haru_points(c1.x), haru_points(c1.y), haru_points(c2.x), haru_points(c2.y),
                          haru_points(end.x), haru_points(end.y));
    }
}

}  // namespace kerfpacket::output
