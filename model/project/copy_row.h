// A bay and its copies in a row, and what lies at the faces along it: see the edit RepeatBay.
#pragma once

#include "model/project/repeat_bars.h"

#include <optional>
#include <vector>

namespace model {

// One face of the bay, along which its copies stand.
struct RowFace {
    Axis axis = Axis::x;
    std::size_t side = 0;  // of the bay: 0 the least
    Nm place = 0;

    Sense inward() const { return side == 0 ? Sense::plus : Sense::minus; }
    RowFace from_behind() const { return {axis, 1 - side, place}; }
};

// Copies are counted from 1; 0 is the bay itself. The frame has the bars of the copies, but not yet
// their bays. What lies where is looked up once: only legs may be changed meanwhile.
class CopyRow {
public:
    CopyRow(const Frame& frame, const Repeated& repeated, const PlanePlaces& places);

    std::vector<RowFace> faces() const;

    // Of the member in Frame::members.
    bool lies_on(std::size_t member, const RowFace& face) const;

    // Whether a bay lies behind the face beside the copy.
    bool has_beside(const RowFace& face, int copy) const;

    // A bar on the face that passes the end of the copy.
    std::optional<std::size_t> bar_along(const RowFace& face, int copy) const;

    // Those on the face that run on from the bay to its copies.
    std::vector<std::size_t> bars_to_copies(const RowFace& face) const;

    // A bar at the end of the copy that runs across the face, or ends there.
    struct Across {
        std::size_t bar = 0;
        bool passes = false;
    };
    std::optional<Across> bar_across(const RowFace& face, int copy) const;

    // Those on the face along the end of the copy.
    std::vector<std::size_t> edges(const RowFace& face, int copy) const;

    // Whether a bar before the face ends there.
    bool has_ends(const RowFace& face) const;

    // Whether a bay before the face has none behind it.
    bool looks_outward(const RowFace& face) const;

    // Whether the place is on a face, at the end of a copy.
    bool is_at_corner(const std::array<Nm, 3>& place) const;

private:
    bool is_at_bay(const ReachBox& at) const;
    Nm begin(int copy) const { return copy == 0 ? it_.box[run_][0] : it_.end(copy - 1); }

    const Frame& frame_;
    const Repeated& it_;
    std::size_t run_;
    std::vector<std::optional<ReachBox>> at_;  // as in Frame::members
    std::vector<ReachBox> bays_;
};

}  // namespace model
