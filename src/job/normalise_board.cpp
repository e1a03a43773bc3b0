// The board, its kerfs, its coupon and its material, as canonical text.
#include <algorithm>
#include <set>
#include <utility>

#include "job/choices.h"
#include "job/writer.h"

namespace kerfpacket::job {
namespace {

std::string_view word(Tick tick) {
    if (tick == Tick::left) return "left";
    return tick == Tick::right ? "right" : "centre";
}

/// A setting that was left out means the same as "solve".
void write(Writer& writer, std::string_view key, const Setting& setting) {
    if (setting.given) writer.length(key, *setting.given);
    else writer.words(key, setting.half ? "half" : "solve");
}

void write_too_deep(Writer& writer, std::vector<TooDeep> kerfs) {
    std::sort(kerfs.begin(), kerfs.end(), [](const auto& a, const auto& b) { return a.n.value < b.n.value; });
    std::vector<Element> pairs;
    pairs.reserve(kerfs.size());
    for (const auto& [n, depth] : kerfs) pairs.push_back({Figure{static_cast<double>(n.value), true}, depth.value});
    if (!pairs.empty()) writer.rows("too_deep", std::move(pairs));
}

void write_moulding(Writer& writer, const Board& board) {
    std::vector<Element> points;
    points.reserve(board.profile.size());
    for (const auto& [height, thickness] : board.profile) points.push_back({height.value, thickness.value});
    if (!points.empty()) writer.rows("profile", std::move(points));
    writer.length("least_thickness", board.least_thickness);
}

bool same(double a, double b) { return canonical(Scalar(Percent{a})) == canonical(Scalar(Percent{b})); }

void write(Writer& writer, const Material& material) {
    writer.header("[[material]]");
    writer.words("name", material.name.value);
    writer.value("break_strain", Percent{material.break_strain_inside});
    if (!same(material.break_strain_outside, outside_strain(material)))
        writer.value("break_strain_outside", Percent{material.break_strain_outside});
    if (material.softness != 1) writer.figure("softness", material.softness);
    if (material.peel) {
        writer.figure("peel_energy", material.peel->front());
        writer.figure("modulus", material.peel->back());
    }
    if (material.grain) writer.flag("grain");
    if (material.scatter) writer.value("scatter", Percent{*material.scatter});
}

/// The keys of a coupon but for its table's header.
void write(Writer& writer, const Coupon& coupon) {
    writer.length("chord", coupon.chord.value);
    writer.length("rise", coupon.rise.value);
    writer.words("held", word(coupon.held.value));
    writer.words("result", word(coupon.outcome.value));
    if (!coupon.by.empty()) writer.words("by", coupon.by);
    writer.length("kerf_depth", coupon.kerf_depth);
    writer.length("spacing", coupon.spacing);
    if (coupon.believed) writer.flag("believed");
}

std::set<std::string_view> used_materials(const Job& job) {
    std::set<std::string_view> used;
    for (const auto& opening : job.openings) used.insert(opening.liner.material.value);
    for (const auto& wall : job.walls) used.insert(wall.board.material.value);
    return used;
}

}  // namespace

void write_board(Writer& writer, const Board& board) {
    writer.value("material", MaterialName{board.material.value});
    writer.length("thickness", board.thickness.value);
    std::vector<Length> plies;
    for (const auto& ply : board.plies) plies.push_back(ply.value);
    if (!plies.empty()) writer.lengths("plies", plies);
    write_moulding(writer, board);
    write(writer, "kerf_depth", board.kerf_depth);
    if (board.kerfs.empty()) write(writer, "spacing", board.spacing);
    writer.length("trim", board.trim.value);
    writer.words("zero", board.zero == End::left ? "left" : "right");
    writer.words("tick", word(board.tick));
    if (board.strip.value == StripOn::edge) writer.words("strip", "edge");
    std::vector<Element> kerfs;
    kerfs.reserve(board.kerfs.size());
    for (const auto& kerf : board.kerfs) kerfs.push_back({kerf.value});
    if (!kerfs.empty()) writer.rows("kerfs", std::move(kerfs));
    write_too_deep(writer, board.too_deep);
}

void write_coupons(Writer& writer, const std::string& title, const std::vector<Coupon>& coupons) {
    for (const Coupon& coupon : coupons) {
        writer.header(coupons.size() == 1 ? "[" + title + "]" : "[[" + title + "]]");
        write(writer, coupon);
    }
}

void write_trials(Writer& writer, const Job& job) {
    const std::set<std::string_view> used = used_materials(job);
    for (const Trial& trial : job.trials) {
        if (!used.contains(trial.material.value)) continue;
        writer.header("[[trial]]");
        writer.value("material", MaterialName{trial.material.value});
        writer.length("thickness", trial.thickness.value);
        writer.length("kerf", trial.kerf.value);
        if (!trial.kerfs_outside) writer.words("kerfs", "inside");
        if (!trial.date.empty()) writer.value("date", Day{trial.date});
        write(writer, trial.tried);
    }
}

void write_stock_rows(Writer& writer, const Job& job, std::string_view header, const std::vector<StockBoard>& rows) {
    const std::set<std::string_view> used = used_materials(job);
    for (const StockBoard& board : rows) {
        if (!used.contains(board.material.value)) continue;
        writer.header(header);
        writer.value("material", MaterialName{board.material.value});
        writer.length("thickness", board.thickness.value);
        writer.length("width", board.width.value);
        writer.length("length", board.length.value);
        if (board.cents) writer.figure("price", *board.cents / 100.0);
        if (board.on_hand) writer.count("on_hand", *board.on_hand);
    }
}

void write_materials(Writer& writer, const Job& job) {
    const std::set<std::string_view> used = used_materials(job);
    auto materials = job.materials;
    std::sort(materials.begin(), materials.end(),
              [](const Material& a, const Material& b) { return a.name.value < b.name.value; });
    for (const Material& material : materials)
        if (used.contains(material.name.value)) write(writer, material);
}

}  // namespace kerfpacket::job
