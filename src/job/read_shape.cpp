#include <algorithm>

#include "job/choices.h"
#include "job/tables.h"

namespace kerfpacket::job {
namespace {

using namespace measure::literals;

const LengthKey span{"span", 1_in, longest, R"("6 ft")"};
const LengthKey rise{"rise", finest, longest, R"("11-1/2 in")"};

/// A radius that only some shapes take.
struct Radius {
    LengthKey key;
    std::vector<Shape> shapes;
    std::optional<Sourced<Length>> Opening::*member;
};

const std::array<Radius, 4>& radii() {
    static const std::array<Radius, 4> all{{
        {{"radius", finest, longest, R"("36 in")"}, {Shape::pointed}, &Opening::radius},
        {{"side_radius", finest, longest, R"("9 in")"}, {Shape::three_centred, Shape::tudor}, &Opening::side_radius},
        {{"crown_radius", finest, longest, R"("60 in")"}, {Shape::tudor}, &Opening::crown_radius},
        {{"reverse_radius", finest, longest, R"("40 in")"}, {Shape::eyebrow}, &Opening::reverse_radius},
    }};
    return all;
}

std::string goes_with(std::string_view key, const std::vector<Shape>& shapes) {
    std::string hint = std::string(key) + " goes with shape = ";
    for (std::size_t i = 0; i < shapes.size(); ++i)
        hint.append(i > 0 ? " or \"" : "\"").append(word(shapes[i])).append("\"");
    return hint;
}

/// Reads an opening's shape and the figures that go with it.
class ShapeReader {
public:
    ShapeReader(Context& context, TableReader& reader, Opening& opening)
        : context_(context), reader_(reader), opening_(opening) {}

    void run() {
        shape_ = reader_.choice<Shape>("shape", shape_words(), Need::required);
        opening_.shape = shape_.value_or(Sourced<Shape>{});
        if (is(Shape::ordinates)) {
            refuse("span", "the first and the last station give the span");
            refuse("rise", "the heights give the rise");
        } else {
            read_span_and_rise();
        }
        for (const auto& radius : radii()) read_radius(radius);
        if (is(Shape::pointed)) judge_pointed();
        read_points();
    }

private:
    bool is(Shape shape) const { return shape_ && shape_->value == shape; }

    void refuse(std::string_view key, std::string hint) {
        const std::string message =
            "shape = \"" + std::string(word(opening_.shape.value)) + "\" takes no " + std::string(key);
        reader_.refuse(key, message, std::move(hint));
    }

    /// Without a shape nobody knows which figures it needs, but for the span that all shapes have.
    void read_span_and_rise() {
        const bool stations_instead = !shape_ && reader_.has("ordinates");
        opening_.span =
            reader_.length(span, stations_instead ? Need::optional : Need::required).value_or(Sourced<Length>{});
        const bool free = !shape_ || is(Shape::semicircular) || is(Shape::pointed);
        opening_.rise = reader_.length(rise, free ? Need::optional : Need::required).value_or(Sourced<Length>{});
    }

    void read_radius(const Radius& radius) {
        const auto& shapes = radius.shapes;
        const bool taken = !shape_ || std::find(shapes.begin(), shapes.end(), shape_->value) != shapes.end();
        if (taken) opening_.*radius.member = reader_.length(radius.key, Need::optional);
        else refuse(radius.key.name, goes_with(radius.key.name, shapes));
    }

    void judge_pointed() {
        if (reader_.has("rise") && reader_.has("radius"))
            context_.error(reader_.at("radius"), "the pointed head is given in two ways",
                           "expected rise or radius, not both");
        else if (!reader_.has("rise") && !reader_.has("radius"))
            reader_.missing({"rise", "radius"}, "rise or radius is missing from [[opening]]",
                            "a pointed head takes one of them, for example radius = \"36 in\"");
    }

    void read_points() {
        if (shape_ && !is(Shape::ordinates)) {
            for (const std::string_view key : {"ordinates", "fit", "end_angles"})
                refuse(key, goes_with(key, {Shape::ordinates}));
            return;
        }
        if (shape_ && !reader_.has("ordinates"))
            reader_.missing({"ordinates"}, "ordinates is missing from [[opening]]", ordinates_example());
        opening_.ordinates = read_ordinates(context_, reader_);
        if (!opening_.ordinates || opening_.ordinates->points.empty()) return;
        const auto& points = opening_.ordinates->points;
        if (known(points.front().station) && known(points.back().station))
            opening_.span = {points.back().station.value - points.front().station.value, opening_.ordinates->at};
    }

    Context& context_;
    TableReader& reader_;
    Opening& opening_;
    std::optional<Sourced<Shape>> shape_;
};

}  // namespace

void read_shape(Context& context, TableReader& reader, Opening& opening) {
    ShapeReader(context, reader, opening).run();
}

}  // namespace kerfpacket::job
