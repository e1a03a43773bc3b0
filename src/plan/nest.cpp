#include "plan/nest.h"

#include <algorithm>
#include <cmath>
#include <tuple>

#include "plan/casing.h"
#include "plan/stock_boards.h"
#include "plan/stock_units.h"
#include "stock/pack.h"

namespace kerfpacket::plan {

Length Sector::width() const { return outer * (2 * std::sin(half.radians())); }
Length Sector::height() const { return outer - inner * std::cos(half.radians()); }

Length nest_pitch(const Sector& sector, Length cut) {
    // Sectors of one size, slid along their axis: the far corner of the inner arc meets the outer arc of the next one,
    // grown by the cut.
    const double corner = sector.inner.mm() * std::sin(sector.half.radians());
    const double grown = (sector.outer + cut).mm();
    const Length touching =
        Length::mm(std::sqrt(grown * grown - corner * corner)) - sector.inner * std::cos(sector.half.radians());
    return std::max(touching, sector.outer - sector.inner + cut);
}

std::array<int, 2> nest_grid(const NestedSize& size, Length length, Length width, Length cut) {
    const auto whole = [](double count) { return static_cast<int>(std::floor(count + 1e-9)); };
    if (size.width > length || size.height > width) return {0, 0};
    return {whole((length + cut) / (size.width + cut)), 1 + whole((width - size.height) / size.pitch)};
}

namespace {

/// The ring that a segment is a part of; none where its edges are not arcs about one centre.
std::optional<Sector> sector_of(const CasingSegment& segment) {
    if (segment.inside.segments().size() != 1 || segment.outside.segments().size() != 1) return std::nullopt;
    const geom::Segment& in = segment.inside.segments().front();
    const geom::Segment& out = segment.outside.segments().front();
    if (in.is_line() || out.is_line() || distance(in.centre(), out.centre()) > Length::mm(0.01)) return std::nullopt;
    const Point centre = out.centre();
    const Point middle = out.point(0.5);
    Angle half;
    for (const Point corner : {in.from, in.to, out.from, out.to}) {
        const double ax = (middle.x - centre.x).mm(), ay = (middle.y - centre.y).mm();
        const double bx = (corner.x - centre.x).mm(), by = (corner.y - centre.y).mm();
        half = std::max(half, Angle::radians(std::abs(std::atan2(ax * by - ay * bx, ax * bx + ay * by))));
    }
    if (half > Angle::degrees(90)) return std::nullopt;
    return Sector{in.radius(), out.radius(), half};
}

/// Whether a segment takes the room of a size: one ring's share a stack, where the largest of them tells the room of
/// each; the others are alike where their rectangles are.
bool takes_room_of(const NestedSize& size, const CasingSegment& segment, const std::optional<Sector>& sector) {
    if (size.sector.has_value() != sector.has_value()) return false;
    if (!sector)
        return job::same_size(size.width, segment.board_length) && job::same_size(size.height, segment.board_width);
    return job::same_size(size.sector->inner, sector->inner) && job::same_size(size.sector->outer, sector->outer);
}

class Sizes {
public:
    Sizes(Length cut, std::vector<NestedSize>& all) : cut_(cut), all_(all) {}

    void add(const Piece& piece, Nested of, const std::string& job) {
        if (of == Nested::segments) add_segments(piece, job);
        if (of == Nested::ribs) add_ribs(piece, job);
    }

private:
    /// One form serves all boards that are alike.
    void add_ribs(const Piece& piece, const std::string& job) {
        if (!piece.has_own_ribs() || piece.form->ribs == 0) return;
        NestedSize size{job + piece.id, {}, 1, {}, piece.form->stock.x, piece.form->stock.y, {}};
        for (int n = 1; n <= piece.form->ribs; ++n) size.n.push_back(n);
        measure(size);
        all_.push_back(std::move(size));
    }

    void add_segments(const Piece& piece, const std::string& job) {
        const auto* arch = std::get_if<ArchLines>(&piece.lines);
        if (arch == nullptr || piece.board != 1 || !piece.casing || piece.casing->board) return;
        const std::size_t first = all_.size();
        const std::string id = job + piece.id.substr(0, piece.id.find('/'));
        for (const CasingSegment& segment : arch->segments) {
            const std::optional<Sector> sector = sector_of(segment);
            const auto same =
                std::find_if(all_.begin() + static_cast<std::ptrdiff_t>(first), all_.end(),
                             [&](const NestedSize& size) { return takes_room_of(size, segment, sector); });
            if (same == all_.end()) {
                all_.push_back(
                    {id, {segment.n}, piece.quantity, sector, segment.board_length, segment.board_width, {}});
                continue;
            }
            same->n.push_back(segment.n);
            if (sector) same->sector->half = std::max(same->sector->half, sector->half);
            same->width = std::max(same->width, segment.board_length);
            same->height = std::max(same->height, segment.board_width);
        }
        for (std::size_t i = first; i < all_.size(); ++i) measure(all_[i]);
    }

    void measure(NestedSize& size) const {
        if (size.sector) {
            size.width = size.sector->width();
            size.height = size.sector->height();
        }
        size.pitch = size.sector ? nest_pitch(*size.sector, cut_) : size.height + cut_;
    }

    Length cut_;
    std::vector<NestedSize>& all_;
};

/// Full strips as long as there are segments for them, then one that is as low as the rest allows. Ribs, which do not
/// lie in one another, go row by row.
std::vector<NestStrip> strips_of(const NestPlan& plan, std::size_t i) {
    const NestedSize& size = plan.sizes[i];
    const auto [columns, rows] = plan.grid(size);
    std::vector<NestStrip> strips;
    if (columns == 0) return strips;
    const int most = plan.of == Nested::ribs ? columns : columns * rows;
    for (int first = 0; first < size.all();) {
        const int count = std::min(most, size.all() - first);
        strips.push_back({i, {}, (count + columns - 1) / columns, first, count});
        first += count;
    }
    return strips;
}

void on_sheets(NestPlan& plan, std::vector<NestStrip> strips) {
    if (strips.empty()) return;
    const Ruler ruler(plan.unit);
    stock::Problem problem{{{ruler.room(plan.width, plan.trim, plan.cut), 1}}, {}};
    for (const NestStrip& strip : strips)
        problem.kinds.push_back({ruler.cut(plan.sizes[strip.size].stack(strip.rows), plan.cut), 1});
    for (const stock::Packed& packed : stock::pack(problem).sticks) {
        NestSheet sheet;
        Length at = plan.trim;
        for (const std::size_t piece : packed.pieces) {
            NestStrip strip = strips[piece];
            strip.from = at;
            at = at + plan.sizes[strip.size].stack(strip.rows) + plan.cut;
            sheet.strips.push_back(strip);
        }
        sheet.offcut = std::max(Length(), plan.width - at);
        plan.sheets.push_back(std::move(sheet));
    }
}

}  // namespace

std::array<int, 2> NestPlan::grid(const NestedSize& size) const {
    return nest_grid(size, length - trim * 2, width - trim * 2, cut);
}

int NestPlan::laid(std::size_t size) const {
    int count = 0;
    for (const NestSheet& sheet : sheets)
        for (const NestStrip& strip : sheet.strips)
            if (strip.size == size) count += strip.count;
    return count;
}

std::array<int, 2> NestPlan::copy_and_number(std::size_t size, int i) const {
    const auto& n = sizes[size].n;
    const auto at = static_cast<std::size_t>(i);
    return {1 + static_cast<int>(at / n.size()), n[at % n.size()]};
}

NestPlan nest_plan(const std::vector<const Plan*>& jobs, Nested of) {
    const auto named = std::find_if(jobs.begin(), jobs.end(), [](const Plan* job) { return job->stock.sheet; });
    const std::array<Length, 2> sheet = named == jobs.end() ? usual_sheet : *(*named)->stock.sheet;
    const Plan& first = named == jobs.end() ? *jobs.front() : **named;
    NestPlan plan{of, first.header.units, std::max(sheet[0], sheet[1]), std::min(sheet[0], sheet[1]), {}, {}, {}, {}};
    plan.trim = end_trim(first.stock, plan.unit);
    for (const Plan* job : jobs) plan.cut = std::max(plan.cut, job->saw.kerf.value);
    Sizes sizes(plan.cut, plan.sizes);
    for (const Plan* job : jobs)
        for (const Piece& piece : job->pieces)
            sizes.add(piece, of, jobs.size() == 1 ? std::string() : job->header.number + " ");
    // Not the order of the file, but the highest first and then by name.
    std::stable_sort(plan.sizes.begin(), plan.sizes.end(), [](const NestedSize& a, const NestedSize& b) {
        return std::tuple(-a.height.mm(), a.id, a.n) < std::tuple(-b.height.mm(), b.id, b.n);
    });
    std::vector<NestStrip> strips;
    for (std::size_t i = 0; i < plan.sizes.size(); ++i)
        for (const NestStrip& strip : strips_of(plan, i)) strips.push_back(strip);
    std::stable_sort(strips.begin(), strips.end(), [&](const NestStrip& a, const NestStrip& b) {
        return plan.sizes[a.size].stack(a.rows) > plan.sizes[b.size].stack(b.rows);
    });
    if (strips.size() > static_cast<std::size_t>(stock::most_pieces)) strips.resize(stock::most_pieces);
    on_sheets(plan, std::move(strips));
    return plan;
}

}  // namespace kerfpacket::plan
