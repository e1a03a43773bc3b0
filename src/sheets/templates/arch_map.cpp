#include "sheets/templates/arch_map.h"

#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length on_the_line = 0.05_mm;

class ArchMap {
public:
    ArchMap(const TemplateContext& context, const ArchOpening& arch, const TemplateWays& ways)
        : context_(context),
          ways_(ways),
          piece_(arch.piece()),
          opening_(arch),
          arch_(arch.lines()),
          half_(arch.half),
          springs_(measured_springs(arch_)),
          level_(arch.spring_level()),
          centre_(arch.wall_crown()) {}

    TemplateMap map() const {
        const Length half = arch_.wall_half_span();
        TemplateMap map;
        map.title = words("template.title_map");
        map.outline = words("template.outline", {{"piece", context_.titles.piece}});
        map.aside = kerf_side(piece_, context_.kit);
        map.span = {
            {-half, level_}, {half, level_}, words("template.span", {{"span", with_unit(opening_.wall_span())}})};
        if (half_) map.span = {{-half, level_}, {{}, level_}, words("template.half_span", {{"span", with_unit(half)}})};
        map.ways = ways_text(context_, ways_);
        map.steps = joining_steps(context_, words("template.step_5"), half_);
        if (half_) map.steps.push_back(words("template.step_flip"));
        // A head of one arc has its radius in the names of its lines.
        if (arch_.arcs.size() > 1 && measured_is_drawn()) map.table = trammels();
        map.checks = checks();
        return map;
    }

private:
    std::string words(std::string_view key, const fonts::Words::Values& values = {}) const {
        return context_.kit.words(key, values);
    }
    std::string with_unit(Length length) const { return context_.tape.with_unit(length); }

    std::vector<MapCheck> checks() const {
        const Length half = arch_.wall_half_span();
        std::vector<MapCheck> rows;
        if (half_) rows.push_back({words("template.check_left_half"), with_unit(half)});
        else
            rows = {{words("template.check_span"), with_unit(opening_.wall_span())},
                    {words("template.check_half"), words("template.each", {{"length", with_unit(half)}})}};
        if (!arch_.springs_level()) {
            const bool left = springs_[0].y > springs_[1].y;
            rows.push_back({words(left ? "template.check_left_spring" : "template.check_right_spring"),
                            with_unit(measure::abs(springs_[0].y - springs_[1].y))});
        }
        rows.push_back({words(arch_.symmetric && !half_ ? "template.check_rise" : "template.check_rise_centre"),
                        with_unit(opening_.wall_rise())});
        if (arch_.casing_outside) casing(rows);
        diagonals(rows);
        return rows;
    }

    void casing(std::vector<MapCheck>& rows) const {
        const Path& outside = *arch_.casing_outside;
        if (half_) rows.push_back({words("template.check_casing_half"), with_unit(-outside.start().x)});
        else rows.push_back({words("template.check_casing"), with_unit(outside.end().x - outside.start().x)});
        if (const auto top = height_over(outside, {}); top && piece_.boards > 1)
            rows.push_back({words("template.check_apex"), with_unit(*top - level_)});
    }

    /// From where the wall meets its uprights to the wall on the centre line.
    void diagonals(std::vector<MapCheck>& rows) const {
        const auto from = [&](Point spring) { return with_unit(geom::distance(spring, centre_)); };
        if (arch_.symmetric) {
            rows.push_back({words("template.check_diagonal"), from({-arch_.wall_half_span(), level_})});
            return;
        }
        rows.push_back({words("template.check_left_diagonal"), from(arch_.wall_springs[0])});
        rows.push_back({words("template.check_right_diagonal"), from(arch_.wall_springs[1])});
    }

    /// The arcs are those of the measured curve. Of a splayed opening that was measured on its far side it is not on
    /// the template, and struck there they would be a wrong arch.
    bool measured_is_drawn() const { return arch_.measured == arch_.wall || arch_.measured == arch_.finish; }

    FigureTable trammels() const {
        const bool wall = piece_.measured_to == job::Surface::wall;
        FigureTable table;
        table.heading = words("template.trammel");
        table.aside = words(wall ? "template.trammel_wall" : "template.trammel_finish");
        table.shares = {0.16, 0.2, 0.24, 0.4};
        for (const char* head : {"radius", "sideways", "upward", "strike"})
            table.heads.push_back(words(std::string("template.trammel_") + head));
        for (const plan::Trammel& arc : arch_.arcs)
            table.rows.push_back(
                {with_unit(arc.radius), sideways(arc.centre.x), upward(arc.centre.y - level_),
                 words("template.trammel_between", {{"from", sideways(arc.from.x)}, {"to", sideways(arc.to.x)}})});
        return table;
    }

    std::string sideways(Length x) const {
        if (measure::abs(x) < on_the_line) return words("template.trammel_centre_line");
        return words(x < Length() ? "template.trammel_left" : "template.trammel_right",
                     {{"length", with_unit(measure::abs(x))}});
    }
    std::string upward(Length y) const {
        if (measure::abs(y) < on_the_line) return words("template.trammel_spring_line");
        return words(y < Length() ? "template.trammel_below" : "template.trammel_above",
                     {{"length", with_unit(measure::abs(y))}});
    }

    const TemplateContext& context_;
    const TemplateWays& ways_;
    const plan::Piece& piece_;
    const ArchOpening& opening_;
    const plan::ArchLines& arch_;
    bool half_;
    std::array<Point, 2> springs_;
    Length level_;
    Point centre_;  ///< of the wall line, on the centre line
};

}  // namespace

TemplateMap arch_map(const TemplateContext& context, const ArchOpening& arch, const TemplateWays& ways) {
    return ArchMap(context, arch, ways).map();
}

}  // namespace kerfpacket::sheets
