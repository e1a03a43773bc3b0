#pragma once
// Heads of every shape with casing and form, for tests that ask the same of all of them. All invented.

#include <string>
#include <vector>

#include "kit.h"

namespace kerfpacket::tests {

struct HeadCase {
    std::string name;
    job::Job job;
    std::string media;
};

namespace heads {

inline job::Opening head(job::Shape shape, measure::Length span, measure::Length rise) {
    job::Opening opening = lantern_court();
    opening.shape.value = shape;
    opening.span.value = span;
    opening.rise = rise > 0_mm ? at_line(rise, 24) : job::Sourced<measure::Length>{};
    // Thin enough for every bend here, so that no shape is left out for its radius.
    opening.liner.thickness.value = 0.375_in;
    opening.liner.spacing.given = 0.5_in;
    opening.liner.kerf_depth.half = true;
    opening.form = job::Form{};
    return opening;
}

inline void add_legs(job::Opening& opening, measure::Length left, measure::Length right) {
    opening.legs = {{at_line(left, 25), at_line(right, 25)}};
}

inline std::vector<job::Opening> all() {
    using job::Shape;
    std::vector<job::Opening> heads{head(Shape::segmental, 58.75_in, 13.625_in),
                                    head(Shape::semicircular, 36_in, 18_in),
                                    head(Shape::elliptical, 60_in, 20_in),
                                    head(Shape::three_centred, 60_in, 18_in),
                                    head(Shape::pointed, 40_in, {}),
                                    head(Shape::tudor, 60_in, 18_in),
                                    head(Shape::parabolic, 60_in, 18_in),
                                    head(Shape::catenary, 48_in, 24_in),
                                    head(Shape::horseshoe, 40_in, 26_in),
                                    head(Shape::eyebrow, 72_in, 11_in),
                                    head(Shape::segmental, 58.75_in, 13.625_in),
                                    head(Shape::elliptical, 60_in, 20_in),
                                    head(Shape::segmental, 30_in, 6_in)};
    heads[4].radius = at_line(44_in, 24);
    add_legs(heads[0], 80_in, 80_in);
    add_legs(heads[4], 72_in, 72_in);
    add_legs(heads[6], 70_in, 70_in);
    add_legs(heads[10], 80.125_in, 80_in);
    add_legs(heads[11], 72_in, 73.5_in);
    heads[3].measured_to = job::Surface::finish;
    heads[8].measured_to = job::Surface::finish;
    return heads;
}

inline std::string name_of(const job::Opening& opening, std::size_t number) {
    return "head " + std::to_string(number) + " of shape " + std::to_string(static_cast<int>(opening.shape.value));
}

}  // namespace heads

/// Every shape on Letter in inches and on A4 in millimetres, with casing in as few segments as fit a board.
inline const std::vector<HeadCase>& head_cases() {
    static const std::vector<HeadCase> cases = [] {
        std::vector<HeadCase> all;
        const std::vector<job::Opening> heads = heads::all();
        for (std::size_t i = 0; i < heads.size(); ++i) {
            for (const bool metric : {false, true}) {
                job::Opening opening = heads[i];
                opening.casing = job::Casing{at_line(i % 2 == 0 ? 3.5_in : 2.25_in, 51),
                                             at_line(0.1875_in, 52),
                                             job::WallSide::room,
                                             {},
                                             at_line(9.25_in, 54)};
                opening.quantity = i % 3 == 0 ? 2 : 1;
                job::Job job = job_of(opening);
                if (metric) job.header.units = measure::Unit::millimetre;
                all.push_back({heads::name_of(opening, i) + (metric ? ", metric" : ""), job,
                               metric ? "iso_a4_210x297mm" : "na_letter_8.5x11in"});
            }
        }
        return all;
    }();
    return cases;
}

}  // namespace kerfpacket::tests
