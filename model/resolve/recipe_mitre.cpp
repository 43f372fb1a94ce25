// Mitre: both members are cut at 45 degrees through the corner, a gusset laps both.
#include "model/resolve/corner_plate.h"
#include "model/resolve/set_in.h"

namespace model {
namespace {

bool never(const Bar&, const Bar&) { return false; }

bool ends(Meets meets) { return meets == Meets::at_from || meets == Meets::at_to; }

// Whether the bar ends on the other one's line, and the other one's leg points along it from there:
// only then does a cut through the corner part the two.
bool ends_at_heel_of(const Bar& bar, Meets meets, const Bar& other) {
    const std::size_t i = across_index(other, index_of(bar.run));
    const Nm end = meets == Meets::at_from ? bar.from : bar.to;
    const int into = meets == Meets::at_from ? 1 : -1;
    return end == heel(other, i) && other.leg[i] == into && other.inward[i] == into;
}

// How wide the bar's wall is that lies in a face across that axis; of a tube, the whole of it.
Nm width_in_face(const Bar& bar, std::size_t axis) {
    const std::size_t i = section_axis(bar, across_index(bar, axis));
    const auto& wall = bar.shape->walls[static_cast<std::size_t>(bar.shape->primary[i])];
    return wall.hi[1 - i] - wall.lo[1 - i];
}

Unsuited not_mitred(const FrameSkeleton& s, const Meeting& meeting) {
    const Bar& upper = s.bars[meeting.upper];
    const Bar& lower = s.bars[meeting.lower];
    auto unsuited = not_flush(s, meeting);
    if (!unsuited.why.empty()) return unsuited;
    if (!ends(meeting.upper_meets) || !ends(meeting.lower_meets)) {
        return {"one of the two runs on past the corner", "flush", true};
    }
    const std::size_t axis = common_axis(upper, lower);
    if (width_in_face(upper, axis) != width_in_face(lower, axis)) {
        return {"their legs in the face that they share are not equally wide", "flush"};
    }
    if (!ends_at_heel_of(upper, meeting.upper_meets, lower) ||
        !ends_at_heel_of(lower, meeting.lower_meets, upper)) {
        return {"the legs do not point into the corner from both ends", "flush"};
    }
    return {};
}

// From the other one's heel, wherever that was set in; recedes as much as it goes across. Each is
// held back by half the gap; what trims it further is told (trim.cpp).
void cut(Bar& bar, Meets meets, const Bar& other, Nm end_gap) {
    const bool at_from = meets == Meets::at_from;
    const int into = at_from ? 1 : -1;
    PieceEnd& end = bar.ends[at_from ? 0 : 1];
    end.slope[section_axis(bar, across_index(bar, index_of(other.run)))] = 1.0;
    (at_from ? bar.from : bar.to) =
        heel(other, across_index(other, index_of(bar.run))) + into * (end_gap / 2);
}

void cut_both(FrameSkeleton& s, const Meeting& meeting, Nm end_gap) {
    Bar& upper = s.bars[meeting.upper];
    Bar& lower = s.bars[meeting.lower];
    cut(upper, meeting.upper_meets, lower, end_gap);
    cut(lower, meeting.lower_meets, upper, end_gap);
}

Unsuited gusset_at(PartMaker& maker, const Corner& corner) {
    return add_gusset(maker, corner, false);
}

}  // namespace

RecipeRow mitre() {
    return {.told = {"mitre",
                     "both are cut at 45 degrees through the corner, and a gusset of sheet laps "
                     "both on the inside (of tubes on the outside)"},
            .unsuited = not_mitred,
            .lies_behind = never,
            .in_one_layer = true,
            .cut_ends = cut_both,
            .trims_at_upper = false,
            .add_parts = gusset_at};
}

}  // namespace model
