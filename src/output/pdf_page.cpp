#include "output/pdf_page.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <variant>

#include <fmt/format.h>

#include "measure/require.h"
#include "output/code_areas.h"
#include "output/dash.h"
#include "output/deflate.h"
#include "output/draw_order.h"
#include "output/pdf_structure.h"
#include "output/pdf_text.h"

namespace kerfpacket::output {
namespace {

/// Shows the string before it.
constexpr std::string_view end_of_text = "Tj";

constexpr bool is_regular(char c) {
    return c != ' ' && c != '(' && c != ')' && c != '<' && c != '>' && c != '[' && c != ']' && c != '/';
}

/// True when the path goes round its own bounds and does nothing else.
bool is_upright_rectangle(const geom::Path& path) {
    const auto& sides = path.segments();
    return path.closed() && sides.size() == 4 && std::all_of(sides.begin(), sides.end(), [](const geom::Segment& s) {
               return s.is_line() && (s.from.x == s.to.x || s.from.y == s.to.y);
           });
}

bool is_circle(const geom::Path& path) {
    const auto& halves = path.segments();
    const auto is_half = [](const geom::Segment& s) { return std::abs(std::abs(s.turn.degrees()) - 180) < 1e-9; };
    return path.closed() && halves.size() == 2 && std::all_of(halves.begin(), halves.end(), is_half);
}

/// The two contents of a page.
enum class Layer { own, frame };

/// Never empty: ghostscript stops at a packed stream of nothing. In a frame, pen and ink as a page begins (ISO 32000-1,
/// table 52), whatever is drawn before it.
const char* start_of(Layer layer) { return layer == Layer::own ? "1 w" : "1 w[]0 d 0 G 0 g"; }

/// Items of a page being drawn. It knows what pen, ink and font are set and says each again only when it changes; lines
/// of one pen become one stroke, lines of text one text object. Call `finish` after the last item.
class PageWriter {
public:
    /// What is told of the page beside its content goes to `drawn`.
    PageWriter(const page::Page& page, const FaceCodes& codes, Layer layer, Drawn& drawn)
        : page_(page), codes_(codes), layer_(layer), content_(start_of(layer)), drawn_(drawn) {}

    /// What an item is read with: a part of the page, or nothing for an artifact.
    using Reader = std::optional<std::size_t>;

    void draw(const page::PathItem& item, Reader reader);
    void draw(const page::TextItem& item, Reader reader);
    void draw(const page::CodeItem& item, Reader reader);
    void draw(const page::LinkItem& item, Reader /*links are no content*/) { drawn_.links.push_back(&item); }
    std::string finish();

private:
    /// What the next item may go on with.
    enum class Open { nothing, stroke, text };
    struct Pen {
        long long width = 1000;
        page::Dash dash = page::Dash::solid;
        page::Ink ink = page::Ink::black;
        bool operator==(const Pen&) const = default;
    };
    /// A run of content that is read with one part of the page. Begun inside a text object it ends there.
    struct Run {
        Reader reader;
        bool in_text = false;
    };
    /// In thousandths of a point.
    struct Place {
        long long x = 0;
        long long y = 0;
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
    void set_font(std::size_t font, long long size);
    void begin_text();
    void move_text_to(Place start, geom::Angle angle);
    void show(std::string_view codes) {
        add_literal(content_, codes);
        say(end_of_text);
    }
    Place written(Point point) const;
    /// Until `leave_centre` what is traced is told from the middle of a circle: all circles of a size are told alike,
    /// and packed to next to nothing.
    void enter_centre(const geom::Path& circle);
    void leave_centre();
    void trace(const geom::Path& path);
    void trace(const geom::Segment& segment);

    /// Appends a token or several. Where one begins with a bracket or a stroke, or the one before it ends with one, no
    /// space is between them (ISO 32000-1, 7.2.2).
    void say(std::string_view words) {
        if (is_regular(words.front())) part();
        content_.append(words);
    }
    /// Numbers in thousandths, and the operator that takes them.
    void say(std::initializer_list<long long> numbers, std::string_view what);
    void say_exactly(double number) {
        part();
        add_number(content_, number, 5);
    }
    /// A space, where what stands before needs one.
    void part() {
        if (!content_.empty() && is_regular(content_.back())) content_ += ' ';
    }

    const page::Page& page_;
    const FaceCodes& codes_;
    Layer layer_;
    std::string content_;
    Drawn& drawn_;
    Open open_ = Open::nothing;
    std::optional<Run> run_;
    Point origin_;  ///< of what is traced, as it is written
    Place text_;    ///< where the open text object last stood
    Pen pen_;
    page::Ink fill_ink_ = page::Ink::black;
    std::optional<std::size_t> font_;
    long long font_size_ = 0;
};

void PageWriter::say(std::initializer_list<long long> numbers, std::string_view what) {
    part();
    for (const long long number : numbers) {
        add_thousandths(content_, number);
        content_ += ' ';
    }
    content_.append(what);
}

PageWriter::Place PageWriter::written(Point point) const {
    const Point at = page::corrected(page_, point) - origin_;
    return {thousandths(at.x), thousandths(at.y)};
}

void PageWriter::enter_centre(const geom::Path& circle) {
    const geom::Segment& half = circle.segments().front();
    const Point centre = half.from + (half.to - half.from) * 0.5;
    const Place at = written(centre);
    say("q 1 0 0 1");
    say({at.x, at.y}, "cm");
    origin_ = page::corrected(page_, centre);
}

void PageWriter::leave_centre() {
    say("Q");
    origin_ = {};
}

void PageWriter::draw(const page::PathItem& item, Reader reader) {
    const Pen pen{thousandths(item.width), item.dash, item.ink};
    const bool stroked = item.width > Length{}, circle = is_circle(item.path);
    const bool goes_on =
        open_ == Open::stroke && stroked && !item.filled && !circle && pen == pen_ && run_ && run_->reader == reader;
    if (!goes_on) end_object();
    leave_run(reader, false);
    enter_run(reader, false);
    if (stroked) set_pen(pen);
    if (item.filled) set_fill(item.ink);
    if (circle) enter_centre(item.path);
    trace(item.path);
    if (stroked && item.filled) say("B");
    else if (stroked && circle) say("S");
    else if (stroked) open_ = Open::stroke;
    else say(item.filled ? "f" : "n");  // each alone: areas in one path can cut holes in each other
    if (circle) leave_centre();
}

void PageWriter::draw(const page::TextItem& item, Reader reader) {
    if (item.text.empty()) return;
    const bool upright = item.angle == geom::Angle{};
    if (open_ != Open::text || !upright) end_object();
    leave_run(reader, upright);
    if (upright) space_after_last(reader);
    set_fill(item.ink);
    const long long size = thousandths(item.size);
    const std::vector<Coded> text = codes_.at(static_cast<std::size_t>(item.face)).coded(item.text);
    set_font(font_number(item.face, text.front().font), size);
    const double back = item.align == page::Align::left ? 0 : item.align == page::Align::centre ? 0.5 : 1;
    if (!upright) enter_run(reader, false);
    // The start is rounded after the correction, which holds for the anchor alone.
    const Point start = page::corrected(page_, item.anchor) - geom::Direction::at(item.angle) * (item.advance * back);
    begin_text();
    enter_run(reader, upright);
    move_text_to({to_a_hundredth(start.x), to_a_hundredth(start.y)}, item.angle);
    for (const Coded& part : text) {
        set_font(font_number(item.face, part.font), size);
        show(part.bytes);
    }
    if (!upright) end_object();
}

/// Not a picture, which many a reader smooths: one area of rectangles, in units of a cell.
void PageWriter::draw(const page::CodeItem& item, Reader reader) {
    end_object();
    leave_run(reader, false);
    enter_run(reader, false);
    set_fill(page::Ink::black);
    const Place low = written(item.area.low), high = written(item.area.high);
    say("q");
    for (const long long length : {high.x - low.x, 0LL, 0LL, high.y - low.y})
        say_exactly(static_cast<double>(length) / 1000 / static_cast<double>(item.side));
    say({low.x, low.y}, "cm");
    const auto cells = [](std::size_t count) { return static_cast<long long>(count) * 1000; };
    for (const CodeArea& area : layer_ == Layer::frame ? finder_areas(item) : areas_but_finders(item))
        say({cells(area.column), cells(area.row), cells(area.width), cells(area.height)}, "re");
    say("f Q");
}

std::string PageWriter::finish() {
    end_object();
    end_run();
    return std::move(content_.append("\n"));
}

void PageWriter::end_object() {
    if (open_ == Open::stroke) say("S");
    if (open_ == Open::text) {
        if (run_ && run_->in_text) end_run();
        say("ET");
    }
    open_ = Open::nothing;
}

void PageWriter::end_run() {
    if (run_) say("EMC");
    run_.reset();
}

void PageWriter::leave_run(Reader reader, bool in_text) {
    if (!run_ || run_->reader == reader) return;
    if (!run_->in_text || !in_text) end_object();
    end_run();
}

void PageWriter::space_after_last(Reader reader) {
    if (!run_ || !reader || open_ != Open::text || page_.structure.at(*reader).tag == page::Tag::figure) return;
    measure::require(content_.ends_with(end_of_text), "an open run of text ends with a string");
    content_.insert(content_.size() - end_of_text.size() - 1, 1, ' ');
}

void PageWriter::enter_run(Reader reader, bool in_text) {
    if (run_) return;
    if (reader) {
        fmt::format_to(std::back_inserter(content_), "/{}<</MCID {}>>BDC",
                       structure_type(page_.structure.at(*reader).tag), drawn_.marks.size());
        drawn_.marks.push_back(*reader);
    } else say("/Artifact BMC");
    run_ = Run{reader, in_text};
}

void PageWriter::begin_text() {
    if (open_ == Open::text) return;
    say("BT");
    open_ = Open::text;
    text_ = {};
}

void PageWriter::move_text_to(Place start, geom::Angle angle) {
    if (angle == geom::Angle{}) {
        // A move from the last line's start: rows and columns of text repeat the same few moves.
        say({start.x - text_.x, start.y - text_.y}, "Td");
    } else {
        const double c = std::cos(angle.radians()), s = std::sin(angle.radians());
        for (const double number : {c, s, -s, c}) say_exactly(number);
        say({start.x, start.y}, "Tm");
    }
    text_ = start;
}

void PageWriter::set_pen(const Pen& pen) {
    if (pen.width != pen_.width) say({pen.width}, "w");
    if (pen.dash != pen_.dash) say(fmt::format("[{}]0 d", fmt::join(dash_pattern(pen.dash), " ")));
    if (pen.ink != pen_.ink) say(pen.ink == page::Ink::black ? "0 G" : "1 G");
    pen_ = pen;
}

void PageWriter::set_fill(page::Ink ink) {
    if (ink != fill_ink_) say(ink == page::Ink::black ? "0 g" : "1 g");
    fill_ink_ = ink;
}

void PageWriter::set_font(std::size_t font, long long size) {
    if (font_ == font && font_size_ == size) return;
    font_ = font;
    font_size_ = size;
    if (drawn_.fonts.size() <= font) drawn_.fonts.resize(font + 1);
    drawn_.fonts[font] = true;
    say(fmt::format("/F{}", font));
    say({size}, "Tf");
}

void PageWriter::trace(const geom::Path& path) {
    measure::require(!path.empty(), "a path to draw has segments");
    if (is_upright_rectangle(path)) {
        const geom::Rect bounds = path.bounds();
        const Place low = written(bounds.low), high = written(bounds.high);
        say({low.x, low.y, high.x - low.x, high.y - low.y}, "re");
        return;
    }
    const Place start = written(path.start());
    say({start.x, start.y}, "m");
    for (const geom::Segment& segment : path.segments()) trace(segment);
    if (path.closed()) say("h");
}

void PageWriter::trace(const geom::Segment& segment) {
    if (segment.is_line()) {
        const Place to = written(segment.to);
        say({to.x, to.y}, "l");
        return;
    }
    for (const auto& [c1, c2, end] : geom::cubic_pieces(segment)) {
        const Place a = written(c1), b = written(c2), to = written(end);
        say({a.x, a.y, b.x, b.y, to.x, to.y}, "c");
    }
}

}  // namespace

Drawn drawn(const page::Page& page, const FaceCodes& codes) {
    std::vector<const page::Item*> order = draw_order(page);
    const auto frame = std::stable_partition(order.begin(), order.end(),
                                             [&](const page::Item* item) { return !page::in_frame(page, *item); });
    Drawn drawn;
    const auto content = [&](Layer layer) {
        PageWriter writer(page, codes, layer, drawn);
        const auto draw = [&](const page::Item* item) {
            const PageWriter::Reader reader = page::read_with(page, *item);
            std::visit([&](const auto& one) { writer.draw(one, reader); }, *item);
        };
        if (layer == Layer::own) std::for_each(order.begin(), frame, draw);
        std::for_each(frame, order.end(), [&](const page::Item* item) {
            if (layer == Layer::frame || std::holds_alternative<page::CodeItem>(*item)) draw(item);
        });
        return writer.finish();
    };
    // Drawn last, told first: so the marks in it have the same numbers on every page.
    if (frame != order.end()) drawn.frame = content(Layer::frame);
    drawn.content = deflated(content(Layer::own));
    return drawn;
}

}  // namespace kerfpacket::output
