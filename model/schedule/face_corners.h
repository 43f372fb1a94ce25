// Where a tape finds the corners of a flat rectangle of a frame. Only files of this folder use it.
#pragma once

#include "model/schedule/face_sides.h"

#include <optional>
#include <vector>

namespace model {

// Frame, resolved and placed must outlive it.
class FaceCorners {
public:
    FaceCorners(const Frame& frame, const Resolved& resolved, const ResolvedFrame& placed);

    // The side in the plane at `at`, or, where a bay ends inside of its frame, the next rectangle
    // that has its corners.
    std::optional<SideOfBay> measurable(std::size_t axis, Nm at, const SideOfBay& side) const;

private:
    bool is_at_edge(const Piece& bar, std::size_t axis, Nm at) const;
    bool reaches(const Piece& bar, std::size_t axis, Nm at) const;
    bool has_corner(std::size_t axis, const Point& at) const;
    bool is_measurable(std::size_t axis, Nm plane, const SideOfBay& side) const;
    std::vector<SideOfBay> with_another_plane(std::size_t axis, const SideOfBay& side) const;

    const Frame& frame_;
    const ResolvedFrame& placed_;
    std::vector<const Piece*> bars_;
    Nm hair_ = 0;  // by which laps shift bars, and bars end before a plane
};

}  // namespace model
