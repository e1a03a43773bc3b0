#pragma once
// The tables of a job file, one function each. A mistake is told to the context; what could not be read stays at its
// default with position line 0.

#include "job/reader.h"

namespace kerfpacket::job {

/// The unit comes first: every bare number in the file waits for it.
void read_units(Context& context, const toml::table& job);

Header read_header(Context& context, const toml::table& table);
Saw read_saw(Context& context, const toml::table& table);
Printer read_printer(Context& context, const toml::table& table);
/// What is printed on when the job does not say: letter paper.
Printer default_printer();
Stock read_stock(Context& context, const toml::table& table);

/// A liner (its width is the opening's depth) or a wall board (which has splices).
Board read_liner(Context& context, const toml::table& table, const Sourced<Length>& depth);
Board read_wall_board(Context& context, const toml::table& table);

Casing read_casing(Context& context, const toml::table& table);
/// `title`: "[opening.form]" or "[wall.form]".
Form read_form(Context& context, const toml::table& table, std::string_view title);

/// An opening's shape and the figures that go with it; for measured points the span is taken from the stations.
void read_shape(Context& context, TableReader& reader, Opening& opening);
/// A wall's curve takes one of three sets of figures.
void read_curve(Context& context, TableReader& reader, Wall& wall);
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
