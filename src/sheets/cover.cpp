#include "sheets/cover.h"

#include <algorithm>
#include <array>

#include "sheets/furniture.h"
#include "sheets/piece_drawing.h"
#include "sheets/wording.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length lowest = 46_pt;
constexpr Length table_row = 20_pt;
constexpr Length index_row = 14.5_pt;

/// Fills the cover from the top; goes on to a further page where the next part no longer fits.
class Cover {
public:
    Cover(Drafts& drafts, const plan::Plan& plan, const std::vector<IndexEntry>& index, std::size_t pages,
          const Kit& kit)
        : drafts_(drafts), plan_(plan), index_(index), pages_(pages), kit_(kit), tape_(plan.header.units) {}

    void draw() {
        start_page(true);
        name_block();
        banner();
        drawings();
        table();
        cautions();
        index_and_totals();
    }

private:
    std::string words(std::string_view key, const fonts::Words::Values& values = {}) const {
        return kit_.words(key, values);
    }
    const fonts::Style& style() const { return kit_.style; }
    Pen pen() { return {drafts_.back().page, kit_}; }
    Length right() { return drafts_.back().page.width - side_margin; }
    static Type regular(Length size) { return {Face::regular, size}; }
    static Type bold(Length size) { return {Face::bold, size}; }

    void start_page(bool first) {
        Draft draft = new_draft(plan_, "cover", Orientation::portrait);
        draft.title = words("cover.title");
        draft.subtitle = first ? std::string() : words("cover.continued");
        draft.outline = first ? words("cover.title") : std::string();
        drafts_.push_back(std::move(draft));
        y_ = drafts_.back().page.height - 72_pt;
    }

    void need(Length height) {
        if (y_ - height < lowest) start_page(false);
    }

    void name_block() {
        Pen pen = this->pen();
        const std::string job =
            words("cover.job", {{"number", plan_.header.number}, {"revision", plan_.header.revision}});
        const Length job_width = pen.text(Role::text, {right(), y_ - 20_pt}, job, bold(style().title).at_right());
        Type title = bold(style().huge);
        const Length room = right() - side_margin - job_width - 16_pt;
        for (const Length size : {style().huge, style().title, style().strong}) {
            title.size = size;
            if (pen.width(plan_.header.title, title) <= room) break;
        }
        if (pen.width(plan_.header.title, title) > room) {
            title.size = style().title;
            y_ = pen.paragraph(Role::text, {side_margin, y_ - 40_pt}, plan_.header.title, title, right() - side_margin,
                               20_pt) +
                 20_pt;
        } else {
            pen.text(Role::text, {side_margin, y_ - 20_pt}, plan_.header.title, title);
        }
        const std::string units = words(tape_.unit() == measure::Unit::inch ? "cover.units_inch" : "cover.units_mm");
        pen.text(Role::text, {right(), y_ - 38_pt}, plan_.header.date + "    " + units,
                 regular(style().text).at_right());
        pen.text(Role::text, {side_margin, y_ - 38_pt}, summary(), regular(style().text));
        y_ -= 52_pt;
    }

    std::string summary() const {
        const auto openings = std::count_if(plan_.pieces.begin(), plan_.pieces.end(),
                                            [](const plan::Piece& p) { return p.kind == plan::Kind::arch_liner; });
        const auto walls = static_cast<std::ptrdiff_t>(plan_.pieces.size()) - openings;
        const auto part = [&](std::ptrdiff_t n, const char* one, const char* many) {
            return n == 1 ? words(one) : words(many, {{"n", std::to_string(n)}});
        };
        if (openings == 0) return part(walls, "cover.only_wall", "cover.walls");
        std::string text = part(openings, "cover.one_opening", "cover.openings");
        if (walls > 0) text += ", " + part(walls, "cover.one_wall", "cover.walls");
        return text;
    }

    int count(bend::Verdict verdict) const {
        return static_cast<int>(std::count_if(plan_.pieces.begin(), plan_.pieces.end(),
                                              [&](const plan::Piece& p) { return p.bend.verdict == verdict; }));
    }

    void banner() {
        Pen pen = this->pen();
        const int breaks = count(bend::Verdict::break_likely);
        const int careful = count(bend::Verdict::caution);
        const Rect frame{{side_margin, y_ - 30_pt}, {right(), y_}};
        pen.box(Role::caution, frame, breaks > 0 ? style().end : style().heavy);
        const char* key = breaks > 0 ? "cover.banner_break" : careful > 0 ? "cover.banner_caution" : "cover.banner_ok";
        const std::string text = words(key, {{"ok", std::to_string(count(bend::Verdict::ok))},
                                             {"caution", std::to_string(careful)},
                                             {"break", std::to_string(breaks)}});
        const Length x = side_margin + 12_pt;
        pen.text(Role::caution, {x, y_ - 20_pt}, text, bold(style().strong));
        pen.text(Role::caution, {right() - 10_pt, y_ - 20_pt}, words("piece.coupon_first"),
                 regular(style().text).at_right());
        y_ -= 30_pt;
    }

    /// One drawing takes the full width and more height; several stand in two columns.
    void drawings() {
        const bool single = plan_.pieces.size() == 1;
        const Length gap = 24_pt;
        const Length width = single ? right() - side_margin : (right() - side_margin - gap) / 2;
        const Length height = plan_.pieces.size() <= 2 ? 226_pt : 150_pt;
        for (std::size_t i = 0; i < plan_.pieces.size(); ++i) {
            const bool left = single || i % 2 == 0;
            if (left) need(height + 38_pt);
            Pen pen = this->pen();
            const plan::Piece& piece = plan_.pieces[i];
            const Length x = left ? side_margin : side_margin + width + gap;
            pen.text(Role::text, {x, y_ - 22_pt}, piece.id + "   " + drawing_title(piece), bold(style().strong));
            pen.text(Role::text, {x, y_ - 35_pt}, drawing_subtitle(piece), regular(style().small));
            draw_piece(pen, {{x, y_ - 38_pt - height}, {x + width, y_ - 40_pt}}, piece, tape_);
            if (!left || i + 1 == plan_.pieces.size()) y_ -= height + 38_pt;
        }
    }

    std::string drawing_title(const plan::Piece& piece) const {
        if (piece.kind == plan::Kind::wall_board)
            return words(piece.side == job::Side::concave ? "cover.wall_concave" : "cover.wall_convex");
        return words(piece.shape == job::Shape::semicircular ? "cover.opening_semicircular"
                                                             : "cover.opening_segmental");
    }

    std::string drawing_subtitle(const plan::Piece& piece) const {
        return words(
            piece.measured_to == job::Surface::wall ? "cover.measured_wall" : "cover.measured_finish",
            {{"radius", tape_.with_unit(piece.measured_radius)}, {"angle", measure::fixed(piece.turn.degrees(), 1)}});
    }

    void table_head() {
        Pen pen = this->pen();
        y_ -= 20_pt;
        section(pen, side_margin, right(), y_, words("cover.pieces"));
        y_ -= 20_pt;
        for (const Column& column : columns) cell(pen, column, words(column.key), regular(style().small));
        y_ -= 5_pt;
        pen.line(Role::box, {side_margin, y_}, {right(), y_}, style().line);
    }

    struct Column {
        const char* key;
        double at;  ///< of the live width
        Align align;
    };

    void cell(Pen& pen, const Column& column, const std::string& text, Type type) {
        type.align = column.align;
        pen.text(Role::text, {side_margin + (right() - side_margin) * column.at, y_}, text, type);
    }

    void table() {
        need(table_row * std::min(3.0, static_cast<double>(plan_.pieces.size())) + 60_pt);
        table_head();
        for (const plan::Piece& piece : plan_.pieces) {
            if (y_ - table_row < lowest) {
                start_page(false);
                table_head();
            }
            Pen pen = this->pen();
            y_ -= table_row - 6_pt;
            const std::array<std::string, 9> texts{
                piece.quantity > 1 ? piece.id + " x" + std::to_string(piece.quantity) : piece.id,
                piece_name(piece, kit_),
                tape_.exact_plain(piece.thickness) + " x " + tape_.exact_plain(piece.width),
                std::to_string(piece.kerfs.size()),
                tape_.exact_plain(piece.kerf_depth),
                tape_.exact_plain(piece.spacing),
                tape_.plain(piece.blank_length),
                measure::fixed(piece.bend.utilisation, 2),
                verdict_word(piece.bend.verdict, kit_)};
            for (std::size_t i = 0; i < texts.size(); ++i) {
                const bool strong = i == 0 || (i == 8 && piece.bend.verdict != bend::Verdict::ok);
                Type type{strong ? Face::bold : Face::regular, style().text};
                if (i == 8 && piece.bend.verdict == bend::Verdict::break_likely)
                    type = {Face::condensed_bold, style().small};
                cell(pen, columns.at(i), texts.at(i), type);
            }
            y_ -= 6_pt;
            pen.line(Role::box, {side_margin, y_}, {right(), y_}, style().hair);
        }
        notes();
    }

    void notes() {
        Pen pen = this->pen();
        const bool common = std::any_of(plan_.pieces.begin(), plan_.pieces.end(),
                                        [](const plan::Piece& p) { return !p.depth_given || !p.spacing_given; });
        y_ = pen.paragraph(Role::text, {side_margin, y_ - 12_pt}, words("cover.table_note"), regular(style().small),
                           right() - side_margin, 11.5_pt);
        if (common)
            y_ = pen.paragraph(Role::text, {side_margin, y_ - 11.5_pt}, words("cover.common_practice"),
                               regular(style().small), right() - side_margin, 11.5_pt);
        for (const plan::Piece& piece : plan_.pieces)
            y_ = pen.paragraph(Role::text, {side_margin, y_ - 11.5_pt},
                               piece.id + ": " + kerf_side(piece, kit_) + ". " + zero_end(piece, kit_) + ".",
                               regular(style().small), right() - side_margin, 11.5_pt);
        y_ -= 4_pt;
    }

    void cautions() {
        if (std::all_of(plan_.pieces.begin(), plan_.pieces.end(), [](const auto& p) { return p.cautions.empty(); }))
            return;
        need(60_pt);
        {
            Pen pen = this->pen();
            y_ -= 18_pt;
            section(pen, side_margin, right(), y_, words("cover.cautions"));
            y_ -= 8_pt;
        }
        for (const plan::Piece& piece : plan_.pieces) {
            for (const plan::Caution& caution : piece.cautions) {
                need(30_pt);
                Pen pen = this->pen();
                pen.text(Role::caution, {side_margin, y_ - 13_pt}, piece.id, bold(style().text));
                y_ = pen.paragraph(Role::caution, {side_margin + 26_pt, y_ - 13_pt},
                                   caution_text(caution, kit_, tape_.unit()), regular(style().text),
                                   right() - side_margin - 26_pt, 13.5_pt) -
                     2_pt;
            }
        }
    }

    void index_and_totals() {
        const Length height = std::max(index_row * static_cast<double>(index_.size()), 118_pt) + 30_pt;
        need(height);
        Pen pen = this->pen();
        y_ -= 20_pt;
        const Length split = (right() + side_margin) / 2;
        const Length top = y_;
        section(pen, side_margin, split - 12_pt, top, words("cover.pages"));
        Length base = top - 20_pt;
        for (const IndexEntry& entry : index_) {
            const std::string pages = entry.first == entry.last
                                          ? std::to_string(entry.first + 1)
                                          : std::to_string(entry.first + 1) + "-" + std::to_string(entry.last + 1);
            pen.text(Role::text, {side_margin, base}, entry.title, regular(style().small));
            pen.text(Role::text, {split - 12_pt, base}, pages, regular(style().small).at_right());
            pen.link({{side_margin, base - 4_pt}, {split - 12_pt, base + 10_pt}}, entry.first);
            base -= index_row;
        }
        totals(pen, split + 6_pt, top);
    }

    void totals(Pen& pen, Length left, Length top) {
        section(pen, left, right(), top, words("cover.totals"));
        Length x = left;
        const std::array<std::pair<const char*, std::size_t>, 3> figures{
            {{"cover.blanks", static_cast<std::size_t>(plan_.blanks())},
             {"cover.cuts", static_cast<std::size_t>(plan_.cuts())},
             {"cover.page_count", pages_}}};
        for (const auto& [key, value] : figures) {
            x += pen.text(Role::text, {x, top - 23_pt}, words(key), regular(style().small)) + 6_pt;
            x += pen.text(Role::text, {x, top - 23_pt}, std::to_string(value), bold(style().strong)) + 18_pt;
        }
        const Length revision = top - 50_pt;
        section(pen, left, right(), revision, words("cover.revision"));
        pen.text(Role::text, {left, revision - 20_pt}, plan_.header.revision, bold(style().text));
        pen.text(Role::text, {left + 40_pt, revision - 20_pt}, plan_.header.date, regular(style().small));
        pen.text(Role::text, {right(), revision - 20_pt},
                 words("page.fingerprint", {{"fingerprint", plan_.fingerprint}}), regular(style().small).at_right());
        const Length sign = revision - 46_pt;
        const Length checked = pen.text(Role::text, {left, sign}, words("cover.checked_by"), regular(style().small));
        pen.line(Role::box, {left + checked + 5_pt, sign - 2_pt}, {right() - 82_pt, sign - 2_pt}, style().line);
        const Length date = pen.text(Role::text, {right() - 76_pt, sign}, words("cover.date"), regular(style().small));
        pen.line(Role::box, {right() - 71_pt + date, sign - 2_pt}, {right(), sign - 2_pt}, style().line);
    }

    static constexpr std::array<Column, 9> columns{{{"cover.column_piece", 0, Align::left},
                                                    {"cover.column_what", 0.085, Align::left},
                                                    {"cover.column_board", 0.365, Align::right},
                                                    {"cover.column_kerfs", 0.44, Align::right},
                                                    {"cover.column_depth", 0.515, Align::right},
                                                    {"cover.column_spacing", 0.605, Align::right},
                                                    {"cover.column_blank", 0.715, Align::right},
                                                    {"cover.column_u", 0.775, Align::right},
                                                    {"cover.column_verdict", 0.8, Align::left}}};

    Drafts& drafts_;
    const plan::Plan& plan_;
    const std::vector<IndexEntry>& index_;
    std::size_t pages_;
    const Kit& kit_;
    Tape tape_;
    Length y_;  ///< how far the page is filled, from the bottom edge
};

}  // namespace

void add_cover(Drafts& drafts, const plan::Plan& plan, const std::vector<IndexEntry>& index, std::size_t pages,
               const Kit& kit) {
    Cover(drafts, plan, index, pages, kit).draw();
}

}  // namespace kerfpacket::sheets
