#pragma once
// One piece of the job, computed: made once, of parts that are made once.

#include <array>
#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "bend/assess.h"
#include "bend/overcut.h"
#include "bend/sensitivity.h"
#include "curve/survey.h"
#include "plan/blank.h"
#include "plan/choice.h"
#include "plan/cut.h"
#include "plan/lines.h"
#include "plan/rake.h"
#include "plan/splay.h"
#include "plan/tried.h"

namespace kerfpacket::plan {

enum class Kind { arch_liner, wall_board };

/// A sentence to print: a key of templates/<language>/cautions.toml and the values that go into it.
struct Caution {
    std::string key;
    std::vector<std::pair<std::string, std::variant<Length, double, int, std::string>>> values;
};

/// A kerf that was cut too deep, and what to do.
struct DeepKerf {
    int n = 0;
    Length depth;
    bend::Overcut answer;
    bend::Verdict now = bend::Verdict::ok;  ///< on the board as it is, before anything is done about it
    bool through() const { return answer.web <= Length(); }
};

/// What the board would come to on the curve that is recommended, where the job draws another through its points.
struct OtherFit {
    job::Fit fit = job::Fit::fair;
    bend::Verdict verdict = bend::Verdict::break_likely;
    double utilisation = 0;  ///< 0 where the board cannot be laid out on that curve at all
    Length gap;              ///< how far apart the two curves are at most, at the measured points
};

/// Radii at the place that governs the verdict; `measured` where the measured curve is sharpest.
struct Radii {
    Length measured;
    Length wall;
    Length finish;  ///< of the seen (plain) face
    Length line;    ///< of the line that keeps its length
    /// Of the seen face where the bend is tightest: not where the verdict hangs, if kerfs are closer there, or close.
    Length tightest;
};

/// Two like blocks on the spacer, as far left of the blade as right, whose inner corners hold a round edge square to
/// it.
struct Blocks {
    Length size;  ///< both ways
    Length half;  ///< from the blade to either corner
    Length bow;   ///< of the edge between them, toward the fence
};

/// The board against fence, spacer and slide.
struct AtSaw {
    std::optional<Length> spacer{};       ///< unknown until the saw's rear limit is
    std::optional<Length> travel_needed;  ///< the board's width, the least it can be, while the rear limit is unknown
    Length groove_ramp;
    std::optional<Length> rear_limit{};      ///< given, or from the trial groove
    std::optional<Length> spacer_shorter{};  ///< with what a depth stop is off by less depth at the back edge
    std::optional<Length> width_reached{};   ///< of the board, by the slide
    std::optional<Blocks> blocks{};          ///< of a round blank
};

/// From kerf to kerf, square to them. Of a board of several blanks those over its joints are apart: there kerfs make
/// way for the scarf.
struct Gaps {
    Length least;
    Length most;
    std::vector<Length> over_joints{};
};

struct Piece {
    // What is asked for.
    std::string id;  ///< as the job gives it; with "/1", "/2" for the boards of a head that has a point
    Kind kind = Kind::arch_liner;
    int board = 1;  ///< of this opening, from the left
    int boards = 1;
    int quantity = 1;
    job::Surface measured_to = job::Surface::wall;
    job::Side side = job::Side::concave;       ///< the side the piece is seen from; a liner is concave
    job::Shape shape = job::Shape::segmental;  ///< openings only
    Length measured_span;                      ///< span of the opening, or chord of the wall's curve, as measured
    Length measured_rise;
    std::optional<Rake> rake{};    ///< of a board that climbs
    std::optional<Splay> splay{};  ///< of a splayed jamb; then `width` is what the sawn blank takes along a kerf
    std::string material;
    bool own_material = false;  ///< the user's: printed under the name it is given, not one of our words
    bool grain = false;         ///< its wood has one, and the board runs along it
    Length width;
    job::Tick tick = job::Tick::centre;
    job::StripOn strip = job::StripOn::face;

    // How it is cut and bent.
    Cutting cut;
    Gaps gaps;
    Settings settings;
    Blank whole;                ///< as if it were of one length
    std::vector<Joint> joints;  ///< from zero on; none in a board of one length
    std::vector<Blank> blanks;  ///< that it is cut as, from zero on: one more than joints
    const Blank& blank() const& { return whole; }
    Blank blank() && { return std::move(whole); }     ///< of a piece that is about to go
    bool circular = true;                             ///< the bend is one arc: one radius holds all along
    bend::KerfsOn kerfs_on = bend::KerfsOn::outside;  ///< where the bend is sharpest; runs of blanks tell it everywhere
    Angle turn;  ///< of the bend, along the seen face, magnitude; where it reverses, both ways added
    Radii radii;

    // What that comes to.
    int governing = 1;      ///< number of the kerf that the verdict hangs on
    bend::Assessment bend;  ///< of the kerf that governs, with the concerns of all
    AtSaw saw;
    std::vector<int> weak_links;  ///< kerfs whose gaps differ by more than `most_gap_ratio`
    std::vector<bend::Change> sensitivity;
    bend::OvercutLimits overcut_limits;
    std::vector<DeepKerf> deep_kerfs;
    /// Index of the deep kerf that the verdict hangs on as the board is now; none where it hangs on the bend.
    std::optional<std::size_t> governing_deep{};
    const DeepKerf* worst_deep() const { return governing_deep ? &deep_kerfs.at(*governing_deep) : nullptr; }
    std::vector<LimitCurve> limit_curves;  ///< three depths, the shallowest first
    std::optional<CouponResult> coupon;    ///< of the board's, the weakest that counts; where none does, the first
    std::vector<CouponResult> tried;       ///< trials of the material, then all coupons of the board
    Chance chance;
    /// Of a moulded board, strain over break strain where it is thickest and where it is thinnest, at the governing
    /// kerf.
    std::array<double, 2> moulded_use{};
    /// Strain of the board without kerfs, T / 2R, over break strain, where it bends most.
    double solid_utilisation = 0;
    /// Part of the bend that a board loses whose kerfs were filled stiff on a form: r of bend::stiffness_ratio.
    double springs_back = 0;
    Length moisture_move;  ///< how much longer the blank gets for 5 % more moisture; 0 where that is next to nothing

    // What its place adds.
    std::variant<ArchLines, WallLines> lines{};  ///< the same for all boards of an opening
    std::optional<job::Casing> casing{};
    job::TemplateWish template_wish{};
    std::optional<FormRib> form{};
    std::vector<LegBoard> leg_boards{};
    std::optional<curve::Survey> survey{};
    std::optional<OtherFit> other_fit{};
    std::vector<Caution> cautions{};

    /// Along the front edge, of what is told square to the kerfs.
    Length on_edge(Length square) const { return rake ? rake->along_edge(square) : square; }
    /// What one of its blanks is sawn out of: its own length and width, of a splayed one the rectangle that it lies in.
    static Length stock_length(const Blank& blank) { return blank.box ? blank.box->x : blank.length; }
    Length stock_width(const Blank& blank) const { return blank.box ? blank.box->y : width; }
    /// Of all its blanks.
    Length stock_width() const;
    bool spliced() const { return blanks.size() > 1; }
    /// One of two boards of a head that are mirror images.
    bool one_of_twins() const;
    /// The second of twins is bent on the ribs of the first, turned over.
    bool has_own_ribs() const { return form && !(board > 1 && one_of_twins()); }
    /// One of its blanks as a board of its own, for what is stuck on it, counted on it and handed out with it: "S/2" is
    /// the second from zero. A piece that is not spliced is its own.
    Piece of_blank(std::size_t i) const;
    std::string blank_id(std::size_t i) const { return spliced() ? id + "/" + std::to_string(i + 1) : id; }
};

}  // namespace kerfpacket::plan
