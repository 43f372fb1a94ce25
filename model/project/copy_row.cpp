#include "model/project/copy_row.h"

#include <algorithm>

namespace model {

namespace {

bool has_on_both_sides(const Reach& reach, Nm place) {
    return reach[0] < place && place < reach[1];
}

}  // namespace

CopyRow::CopyRow(const Frame& frame, const Repeated& repeated, const PlanePlaces& places)
    : frame_{frame}, it_{repeated}, run_{index_of(repeated.axis)} {
    for (const Member& member : frame.members) at_.push_back(box_of(member, places));
    for (const Bay& bay : frame.bays) {
        if (const auto box = box_of(bay, places)) bays_.push_back(*box);
    }
}

std::vector<RowFace> CopyRow::faces() const {
    std::vector<RowFace> faces;
    for (const Axis axis : across(it_.axis)) {
        for (std::size_t side = 0; side < 2; ++side) {
            faces.push_back({axis, side, it_.box[index_of(axis)][side]});
        }
    }
    return faces;
}

bool CopyRow::lies_on(std::size_t member, const RowFace& face) const {
    const auto& at = at_[member];
    return at && (*at)[index_of(face.axis)] == Reach{face.place, face.place};
}

bool CopyRow::has_beside(const RowFace& face, int copy) const {
    ReachBox room = it_.box;
    room[run_] = {begin(copy), it_.end(copy)};
    room[index_of(face.axis)] = {face.place, face.place};
    return std::ranges::any_of(bays_, [&](const ReachBox& bay) {
        const Reach& its = bay[index_of(face.axis)];
        const bool is_behind = face.side == 0 ? its[0] < face.place : its[1] > face.place;
        return is_behind && lies_beside(room, bay);
    });
}

// In a face of the bay, or within it, wherever along the row.
bool CopyRow::is_at_bay(const ReachBox& at) const {
    ReachBox row = it_.box;
    row[run_] = at[run_];
    return lies_beside(at, row);
}

std::optional<std::size_t> CopyRow::bar_along(const RowFace& face, int copy) const {
    for (std::size_t i = 0; i < at_.size(); ++i) {
        if (frame_.members[i].run != it_.axis || !lies_on(i, face) || !is_at_bay(*at_[i])) continue;
        if (has_on_both_sides((*at_[i])[run_], it_.end(copy))) return i;
    }
    return std::nullopt;
}

std::vector<std::size_t> CopyRow::bars_to_copies(const RowFace& face) const {
    std::vector<std::size_t> found;
    for (std::size_t i = 0; i < at_.size(); ++i) {
        if (frame_.members[i].run != it_.axis || !lies_on(i, face) || !is_at_bay(*at_[i])) continue;
        if ((*at_[i])[run_][1] > it_.end(0)) found.push_back(i);
    }
    return found;
}

std::optional<CopyRow::Across> CopyRow::bar_across(const RowFace& face, int copy) const {
    std::optional<Across> found;
    for (std::size_t i = 0; i < at_.size(); ++i) {
        if (frame_.members[i].run != face.axis || !at_[i]) continue;
        if ((*at_[i])[run_][0] != it_.end(copy) || !is_at_bay(*at_[i])) continue;
        found = Across{i, has_on_both_sides((*at_[i])[index_of(face.axis)], face.place)};
        if (found->passes) break;
    }
    return found;
}

std::vector<std::size_t> CopyRow::edges(const RowFace& face, int copy) const {
    ReachBox corner = it_.box;
    corner[run_] = {it_.end(copy), it_.end(copy)};
    corner[index_of(face.axis)] = {face.place, face.place};
    std::vector<std::size_t> found;
    for (std::size_t i = 0; i < at_.size(); ++i) {
        const Axis run = frame_.members[i].run;
        if (run == it_.axis || run == face.axis || !at_[i]) continue;
        if (lies_beside(corner, *at_[i])) found.push_back(i);
    }
    return found;
}

bool CopyRow::has_ends(const RowFace& face) const {
    for (std::size_t i = 0; i < at_.size(); ++i) {
        if (frame_.members[i].run != face.axis || !at_[i]) continue;
        if ((*at_[i])[index_of(face.axis)][face.side] == face.place) return true;
    }
    return false;
}

bool CopyRow::looks_outward(const RowFace& face) const {
    const std::size_t k = index_of(face.axis);
    return std::ranges::any_of(bays_, [&](const ReachBox& bay) {
        if (bay[k][face.side] != face.place) return false;
        return std::ranges::none_of(bays_, [&](const ReachBox& other) {
            ReachBox beside = other;
            beside[k] = bay[k];
            return other[k][1 - face.side] == face.place && lies_beside(beside, bay);
        });
    });
}

bool CopyRow::is_at_corner(const std::array<Nm, 3>& place) const {
    bool is_at_end = false;
    for (int copy = 0; copy <= it_.times(); ++copy) {
        is_at_end = is_at_end || place[run_] == it_.end(copy);
    }
    return is_at_end && std::ranges::any_of(faces(), [&](const RowFace& face) {
               return place[index_of(face.axis)] == face.place;
           });
}

}  // namespace model
