#pragma once
// Labels that look for a free place: along a line, beside it with a leader, or anywhere in an area.

#include <string>
#include <vector>

#include "sheets/layout/occupancy.h"
#include "sheets/layout/pen.h"

namespace kerfpacket::sheets {

/// A few lines of text that stay together.
class Block {
public:
    struct Row {
        std::string text;
        Type type;  ///< its align and angle are not used
    };

    Block(const Pen& pen, std::vector<Row> rows, Align align = Align::centre);

    Length width() const { return width_; }
    Length height() const { return height_; }
    TurnedBox box(Point centre, Direction along, Length clearance) const {
        return {centre, along, width_ / 2 + clearance, height_ / 2 + clearance};
    }
    void draw(Pen& pen, Role role, Point centre, Direction along = {1, 0}) const;
    /// The same with a white ground, where it stands level.
    Block on_white() const {
        Block block = *this;
        block.on_white_ = true;
        return block;
    }

private:
    bool on_white_ = false;
    std::vector<Row> rows_;
    Align align_;
    Length width_;
    Length height_;
};

/// On which side of a line's direction of travel a label stands.
enum class Beside { left, right };

class Labels {
public:
    /// Labels stand wholly inside `room`.
    Labels(Pen& pen, const Rect& room) : Labels(pen, room, pen.kit().style.hair) {}
    /// With leaders of that width.
    Labels(Pen& pen, const Rect& room, Length leader_width) : pen_(pen), room_(room), leader_width_(leader_width) {}

    Occupancy& taken() { return taken_; }
    const Rect& room() const { return room_; }

    /// Each draws the label at the first place that is free and takes it; false when there is none.
    bool place(Role role, const Block& block, Point centre, Direction along = {1, 0}, Length clearance = 2.5_pt);
    bool along(Role role, const Block& block, const Path& run, Beside side, Length gap);
    /// Level, with a leader that crosses no other line if it can, on this side of the line if it can. The line may lie
    /// outside the room by `beyond`.
    bool with_leader(Role role, const Block& block, const Path& run, Beside side, Length beyond = {});
    /// Tries these places, then a raster over the room from the top.
    bool anywhere(Role role, const Block& block, const std::vector<Point>& first, Length clearance = 7_pt);

    /// Where a block would stand in each corner of the room: upper right, upper left, lower right, lower left.
    std::vector<Point> corners(const Block& block, Length inset) const;

private:
    /// From a point on a line toward a label.
    struct Leader {
        Point on;
        Direction away;
        bool may_cross = false;
    };

    bool within_room(const Rect& bounds) const;
    /// Draws it there and takes its box.
    void set(Role role, const Block& block, Point centre, Direction along, const TurnedBox& box);
    bool lead(Role role, const Block& block, const Leader& leader);

    Pen& pen_;
    Rect room_;
    Length leader_width_;
    Occupancy taken_;
};

}  // namespace kerfpacket::sheets
