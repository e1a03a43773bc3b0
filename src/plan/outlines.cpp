#include "plan/outlines.h"

#include <algorithm>

namespace kerfpacket::plan {
namespace {

using geom::Layer;
using measure::Length;

/// A tool of any usual width passes between two parts.
constexpr Length between = Length::mm(50);
constexpr Length between_pieces = Length::mm(200);

Path joined(const std::vector<Path>& paths, bool closed) {
    std::vector<geom::Segment> segments;
    for (const Path& path : paths) segments.insert(segments.end(), path.segments().begin(), path.segments().end());
    return Path(std::move(segments), closed);
}

class Drawing {
public:
    /// What is added from here on is of this piece.
    void begin(const std::string& id) {
        name_ = id;
        std::replace(name_.begin(), name_.end(), '/', '-');
        if (!layers_.empty()) floor_ -= between_pieces - between;
    }

    /// One more part below those that are there, its left side over theirs. Layers without lines are left out.
    void add(std::vector<Layer> part) {
        std::erase_if(part, [](const Layer& layer) { return layer.paths.empty(); });
        const geom::Rect box = bounds(part);
        const Point by{-box.low.x, floor_ - box.high.y};
        for (Layer& layer : part) {
            for (Path& path : layer.paths) path = path.moved(by);
            layers_.push_back({name_ + "_" + layer.name, std::move(layer.paths)});
        }
        floor_ -= box.height() + between;
    }

    std::vector<Layer> done() && { return std::move(layers_); }

private:
    std::string name_;
    Length floor_;
    std::vector<Layer> layers_;
};

/// Of a splayed board, kerf face up, its wide edge up.
std::vector<Layer> splayed(const Piece& piece, const std::string& which) {
    const Blank& blank = piece.blank();
    const FlatBlank flat(*piece.splay, blank);
    std::vector<Path> kerfs, ends, seen;
    for (const Kerf& kerf : blank.kerfs) kerfs.push_back(flat.kerf(kerf.at));
    for (const std::size_t i : {std::size_t{0}, std::size_t{1}}) {
        const auto cut = flat.leg_cut(i);
        if (cut) seen.push_back(cut->seen);
        if (cut) ends.push_back(cut->kerf);
        else if (blank.trims.at(i) > Length()) ends.push_back(flat.kerf(blank.cut_at(i)));
    }
    return {{"BLANK" + which, {flat.outline()}},
            {"KERFS" + which, kerfs},
            {"ENDS" + which, ends},
            {"ENDS_SEEN" + which, seen}};
}

/// Its foot at the left, its wide edge up, edges square as it is sawn.
Layer leg_outline(const LegBoard& leg, Length width) {
    std::vector<Point> corners{{{}, width}, {}};
    const Length step = width / static_cast<double>(leg.across.size() - 1);
    for (std::size_t i = 0; i < leg.across.size(); ++i)
        corners.push_back({leg.across[i], step * static_cast<double>(i)});
    return {leg.side == job::End::left ? "LEG_LEFT" : "LEG_RIGHT", {Path::polyline(corners, true)}};
}

std::vector<Layer> flat(const Piece& piece, const Blank& blank, const std::string& which) {
    // The board lies kerf face up, its front edge nearest: along x.
    const auto across = [&](Length at, Length lean) {
        return Path::line({blank.from_left(at), {}}, {blank.from_left(at + lean), piece.width});
    };
    std::vector<Path> kerfs, ends;
    for (const Kerf& kerf : blank.kerfs) kerfs.push_back(across(kerf.at, blank.lean));
    for (const std::size_t i : {std::size_t{0}, std::size_t{1}})
        ends.push_back(across(blank.cut_at(i), blank.ends.at(i).lean));
    return {{"BLANK" + which, {Path::rectangle({{{}, {}}, {blank.length, piece.width}})}},
            {"KERFS" + which, kerfs},
            {"ENDS" + which, ends}};
}

std::vector<Path> present(const std::optional<Path>& path) {
    return path ? std::vector<Path>{*path} : std::vector<Path>{};
}

std::vector<Layer> drawn(const ArchLines& lines) {
    std::vector<Path> mitres = lines.liner_mitres;
    mitres.insert(mitres.end(), lines.mitres.begin(), lines.mitres.end());
    return {{"WALL", {lines.wall}},
            {"FINISH", {lines.finish}},
            {"CASING_INSIDE", present(lines.casing_inside)},
            {"CASING_OUTSIDE", present(lines.casing_outside)},
            {"MITRES", mitres},
            {"CASING_JOINTS", lines.segment_joints},
            {"LEGS", lines.leg_lines}};
}

std::vector<Layer> drawn(const WallLines& lines) { return {{"WALL", {lines.wall}}, {"FINISH", {lines.finish}}}; }

/// Its grain level, as the board lies that it is sawn from.
Layer segment_outline(const CasingSegment& segment) {
    const Path round =
        joined({segment.inside, segment.right, segment.outside.reversed(), segment.left.reversed()}, true);
    return {"CASING_" + std::to_string(segment.n), {round.turned(-segment.grain.angle())}};
}

void draw(Drawing& drawing, const Piece& piece) {
    for (std::size_t i = 0; i < piece.blanks.size(); ++i) {
        const std::string which = i == 0 ? "" : "_" + std::to_string(i + 1);
        drawing.add(piece.splay ? splayed(piece.of_blank(i), which) : flat(piece, piece.blanks[i], which));
    }
    if (piece.splay)
        for (const LegBoard& leg : piece.leg_boards) drawing.add({leg_outline(leg, piece.splay->sawn_width())});
    // The boards of one opening share its lines: they stand with the first.
    if (piece.board == 1) {
        drawing.add(std::visit([](const auto& lines) { return drawn(lines); }, piece.lines));
        if (const auto* arch = std::get_if<ArchLines>(&piece.lines))
            for (const CasingSegment& segment : arch->segments) drawing.add({segment_outline(segment)});
    }
    if (piece.form) drawing.add({{"FORM_RIB", {piece.form->curve}}});
}

}  // namespace

std::vector<geom::Layer> outlines(const std::vector<const Piece*>& pieces) {
    Drawing drawing;
    for (const Piece* piece : pieces) {
        drawing.begin(piece->id);
        draw(drawing, *piece);
    }
    return std::move(drawing).done();
}

}  // namespace kerfpacket::plan
