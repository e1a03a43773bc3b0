#include <cmath>
#include <nlohmann/json.hpp>

#include "cli/report.h"
#include "sheets/wording.h"

namespace kerfpacket::cli {
namespace {

using Json = nlohmann::ordered_json;

/// To six decimals: a millionth of a millimetre or degree is noise of the arithmetic.
double six_decimals(double value) { return std::round(value * 1e6) / 1e6; }
double mm(measure::Length length) { return six_decimals(length.mm()); }

Json kerfs_json(const plan::Piece& piece) {
    Json kerfs = Json::array();
    for (const plan::Kerf& kerf : piece.kerfs) kerfs.push_back({{"n", kerf.n}, {"at_mm", mm(kerf.at)}});
    return kerfs;
}

Json cautions_json(const plan::Piece& piece, const plan::Plan& plan, const sheets::Kit& kit) {
    Json cautions = Json::array();
    for (const plan::Caution& caution : piece.cautions)
        cautions.push_back(sheets::caution_text(caution, kit, plan.header.units));
    return cautions;
}

Json piece_json(const plan::Piece& piece, const plan::Plan& plan, const sheets::Kit& kit) {
    const bool inside = piece.kerfs_on == bend::KerfsOn::inside;
    const bend::Assessment& bend = piece.bend;
    return {{"id", piece.id},
            {"kind", piece.kind == plan::Kind::arch_liner ? "arch liner" : "wall board"},
            {"side", piece.side == job::Side::concave ? "concave" : "convex"},
            {"kerfs_on", inside ? "inside" : "outside"},
            {"turn_deg", six_decimals(piece.turn.degrees())},
            {"radius_min_mm", mm(piece.bend_radius)},
            {"thickness_mm", mm(piece.thickness)},
            {"kerf_depth_mm", mm(piece.kerf_depth)},
            {"kerf_mm", mm(piece.kerf)},
            {"web_mm", mm(piece.web())},
            {"spacing_mm", mm(piece.spacing)},
            {"blank_length_mm", mm(piece.blank_length)},
            {"bend_length_mm", mm(piece.bend_length())},
            {"finish_length_mm", mm(piece.finish_length)},
            {"count", piece.kerfs.size()},
            {"kerfs", kerfs_json(piece)},
            {"verdict", verdict_words(bend.verdict)},
            {"strain", bend.strain},
            {"strain_limit", bend.strain_limit},
            {"utilisation", bend.utilisation},
            {"closes", bend.closes},
            {"close_radius_mm", inside ? Json(mm(bend.close_radius)) : Json()},  // null: opening kerfs never close
            {"facet_mm", mm(bend.facet)},
            {"cautions", cautions_json(piece, plan, kit)}};
}

}  // namespace

std::string report_json(const plan::Plan& plan, const page::Document& packet, const sheets::Kit& kit) {
    Json pieces = Json::array();
    for (const plan::Piece& piece : plan.pieces) pieces.push_back(piece_json(piece, plan, kit));
    Json sheets = Json::array();
    for (const SheetCount& sheet : sheet_counts(packet))
        sheets.push_back({{"name", sheet.name}, {"pages", sheet.pages}});
    const Json all = {{"schema", 1},
                      {"job",
                       {{"number", plan.header.number},
                        {"title", plan.header.title},
                        {"revision", plan.header.revision},
                        {"fingerprint", plan.fingerprint}}},
                      {"pieces", pieces},
                      {"sheets", sheets},
                      {"pages", packet.pages.size()}};
    return all.dump(2) + "\n";
}

}  // namespace kerfpacket::cli
