// The rectangles that bars close in the layout planes of a frame while it is put together. Only
// files of this folder use it.
#pragma once

#include "model/assembly/frame_parts.h"
#include "model/schedule/square.h"

#include <array>
#include <map>
#include <optional>
#include <tuple>
#include <utility>
#include <vector>

namespace model {

// In a layout plane: the axis across it, where it lies there, and between which planes along its
// two axes.
struct RectangleAt {
    std::size_t axis = 0;
    Nm at = 0;
    std::array<std::array<Nm, 2>, 2> along{};
};

// Where two bars that run across each other in one layout plane are joined, by their planes.
struct JointCorner {
    std::size_t axis = 0;
    Nm at = 0;
    std::array<Nm, 2> along{};

    bool is_in(const RectangleAt& rectangle) const;
};

struct ClosedRectangle {
    RectangleAt place;
    SquareRow row;
};

class ClosedRectangles {
public:
    explicit ClosedRectangles(const FrameParts& parts);  // it must outlive this

    // None of a joint of anything else, and of bars that run along each other.
    const std::optional<JointCorner>& corner_of(Index joint) const { return corners_[joint]; }

    // Those that a tape finds, with that joint at a corner, whose sides and corners are all there.
    std::vector<ClosedRectangle> at(Index joint, const PieceSet& present) const;

private:
    using LineKey = std::tuple<std::size_t, Nm, std::size_t, Nm>;  // plane, run, where it lies
    using PlaneKey = std::pair<std::size_t, Nm>;
    using Place = std::array<Nm, 2>;

    std::optional<JointCorner> found_corner(const JointOfFrame& joint) const;
    std::optional<std::array<Index, 2>> bars_of(const JointOfFrame& joint) const;
    std::optional<Nm> position(Index member, std::size_t axis) const;
    void add_lines();
    bool is_joined(const PlaneKey& plane, const Place& place, const PieceSet& present) const;
    bool is_covered(const LineKey& line, Nm from, Nm to, const PieceSet& present) const;
    bool is_closed(const RectangleAt& rectangle, const PieceSet& present) const;
    std::optional<Point> corner_for_tape(const RectangleAt& rectangle,
                                         const Place& place,
                                         const PieceSet& present) const;
    std::optional<SquareRow> measured(const RectangleAt& rectangle, const PieceSet& present) const;
    std::string plane_name(std::size_t axis, Nm at) const;

    const FrameParts& parts_;
    std::vector<std::optional<JointCorner>> corners_;                    // by joint
    std::map<PlaneKey, std::map<Place, std::vector<Index>>> joints_at_;  // in each plane
    std::map<LineKey, std::vector<Index>> lines_;                        // pieces
    // Section with its end gaps: as far apart lie the parts of a bar that another one crosses.
    Nm widest_ = 0;
};

}  // namespace model
