#pragma once
// The tables of a job file, one function each. A mistake is told to the context; what could not be read stays at its
// default with position line 0.

#include "job/beside.h"
#include "job/reader.h"

namespace kerfpacket::job {

const std::vector<std::pair<std::string_view, Unit>>& unit_words();
/// The unit comes first: every bare number in the file waits for it. `table`: the one with the key `units`.
void read_units(Context& context, const toml::table& table);

/// A day of the calendar as YYYY-MM-DD; empty where there is none.
std::string read_date(Context& context, TableReader& reader);
Header read_header(Context& context, const toml::table& table);

/// Each key that the table leaves out keeps its value of `otherwise`; blade and kerf are told to be missing when they
/// have none and are needed.
Saw read_saw(Context& context, const toml::table& table, const Saw& otherwise, Need need);
/// Its [labels] go to `beside`.
Printer read_printer(Context& context, const toml::table& table, const Printer& otherwise, Beside& beside);
/// [packet].
PacketWish read_packet(Context& context, const toml::table& table);
/// What is printed on when neither job nor shop says: letter paper.
Printer default_printer();
/// What measured points may be off; 0 where it is not given.
Length read_tape(TableReader& reader);
/// A sheet or a roll by its name; none when the key is absent, or told to be wrong.
std::optional<Sourced<Media>> read_media(Context& context, TableReader& reader, std::string_view key, Need need);
/// [printer.labels]; none where it has a mistake, which is told.
std::optional<LabelStock> read_labels(Context& context, const toml::table& table);
/// [rates]: each key that the table leaves out keeps its value of `otherwise`.
Rates read_rates(Context& context, const toml::table& table, const Rates& otherwise);
Stock read_stock(Context& context, const toml::table& table, const Stock& otherwise);
/// Every [[material]]; one with a mistake is told of and left out.
std::vector<Material> read_materials(Context& context, TableReader& top);

/// A liner (its width is the opening's depth) or a wall board (which has splices).
Board read_liner(Context& context, const toml::table& table, const Sourced<Length>& depth);
Board read_wall_board(Context& context, const toml::table& table);

/// Kerfs that are given one by one, beside which there is no spacing.
std::vector<Sourced<Length>> read_kerfs(Context& context, TableReader& reader);
std::vector<TooDeep> read_too_deep(Context& context, TableReader& reader);
/// The coupons of a board whose other keys are read, one table or several. `board_title`: "opening.liner" or
/// "wall.board".
std::vector<Coupon> read_coupons(Context& context, TableReader& board_reader, std::string_view board_title,
                                 const Board& board);
/// Every [[trial]]; one with a mistake is told of and left out. `saw_kerf` where a row does not give its own.
std::vector<Trial> read_trials(Context& context, TableReader& top, const Sourced<Length>& saw_kerf);
/// Plies, as a number of like ones or their thicknesses; empty where they are not given.
std::vector<Sourced<Length>> read_plies(Context& context, TableReader& reader, const Sourced<Length>& thickness);
/// `profile` and `least_thickness` of a wall board whose other keys are read.
void read_moulding(Context& context, TableReader& reader, Board& board);
/// Tells that a liner has no such keys.
void refuse_moulding(TableReader& reader);

/// [opening.splay]; none where it has a mistake, which is told.
std::optional<Splay> read_splay(Context& context, const toml::table& table);
/// `splayed`: the two sides of its wall differ, so that the one that is taken is told.
Casing read_casing(Context& context, const toml::table& table, bool splayed);
/// [opening.template].
TemplateWish read_template(Context& context, const toml::table& table);
/// `title`: "[opening.form]" or "[wall.form]".
Form read_form(Context& context, const toml::table& table, std::string_view title);

/// An opening's shape and the figures that go with it; for measured points the span is taken from the stations.
void read_shape(Context& context, TableReader& reader, Opening& opening);
/// A wall's curve takes one of three sets of figures.
void read_curve(Context& context, TableReader& reader, Wall& wall);
/// How a board climbs, `rake`, `climbs` and `ends` of a wall; none for a level one, or where there is a mistake, which
/// is told.
std::optional<Rake> read_rake(Context& context, TableReader& reader);
/// Measured points, with fit and end angles; none where the list is not given or is no list.
std::optional<Ordinates> read_ordinates(Context& context, TableReader& reader);
/// "for example ordinates = [...]".
std::string ordinates_example();

Opening read_opening(Context& context, const toml::table& table);
Wall read_wall(Context& context, const toml::table& table);

/// One to three letters or digits.
Sourced<std::string> read_id(Context& context, TableReader& reader);
Surface read_measured_to(TableReader& reader);

}  // namespace kerfpacket::job
