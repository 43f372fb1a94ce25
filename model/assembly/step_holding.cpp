#include "model/assembly/step_holding.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <optional>
#include <vector>

namespace model {
namespace {

// As many ends or joints one person holds or brings together: common practice.
constexpr std::size_t most_alone = 4;

// Across the layout plane in which what is laid down first lies.
std::optional<std::size_t> axis_of_first(const Project& project,
                                         const AssemblyOrder& order,
                                         const AssemblyStep& step) {
    const Index made_in = step.moves.front().made_in;
    const auto& face = made_in < order.steps.size() ? order.steps[made_in].face : step.face;
    const auto& planes = project.frames[step.frame].planes;
    const auto found = std::ranges::find(planes, face, &Plane::name);
    if (found == planes.end()) return std::nullopt;
    return index_of(found->axis);
}

// By its joints so far: by the third of its length that they are in.
bool has_free_end(const Resolved& resolved, const AssemblyStep& step, Index number) {
    const Piece& piece = resolved.pieces[number];
    const std::size_t run = index_of(piece.run);
    const Nm third = (piece.extents.hi[run] - piece.extents.lo[run]) / 3;
    std::array<bool, 3> is_held{};  // by third
    for (const Index j : step.joins) {
        const Joint& joint = resolved.joints[j];
        if (std::ranges::find(joint.pieces, number) == joint.pieces.end()) continue;
        const Nm at = (joint.lap.lo[run] + joint.lap.hi[run]) / 2 - piece.extents.lo[run];
        is_held[at < third ? 0 : (at > 2 * third ? 2 : 1)] = true;
    }
    return is_held[0] != is_held[2];
}

std::size_t free_ends(const Resolved& resolved, const AssemblyStep& step) {
    return static_cast<std::size_t>(
        std::ranges::count_if(step.moves, [&](const AssemblyMove& move) {
            const Index piece = move.pieces.front();
            const bool is_bar =
                move.made_in == no_index && resolved.pieces[piece].kind == PieceKind::bar;
            return is_bar && has_free_end(resolved, step, piece);
        }));
}

// Of the sub-assembly that brings the most of them.
std::size_t meeting_at_once(const Resolved& resolved, const AssemblyStep& step) {
    std::size_t most = 0;
    for (const auto& move : step.moves) {
        if (move.made_in == no_index || move.along == Travel{}) continue;
        const auto is_moved = [&](Index piece) {
            return std::ranges::find(move.pieces, piece) != move.pieces.end();
        };
        const auto meeting = std::ranges::count_if(step.joins, [&](Index j) {
            return std::ranges::any_of(resolved.joints[j].pieces, is_moved);
        });
        most = std::max(most, static_cast<std::size_t>(meeting));
    }
    return most;
}

}  // namespace

std::string_view lies_on(const Project& project, const AssemblyOrder& order, Index number) {
    constexpr std::array<std::array<std::string_view, 2>, 3> sides{
        {{"on its left side", "on its right side"},
         {"on its front", "on its back"},
         {"on its bottom", "on its top"}}};
    const auto& step = order.steps[number];
    if (step.moves.size() < 2 || step.moves.front().along != Travel{}) return {};
    const auto axis = axis_of_first(project, order, step);
    if (!axis) return {};
    std::array<std::size_t, 2> counts{};  // against the axis, with it
    for (const auto& move : step.moves) {
        const double along = move.along[*axis];
        if (std::abs(std::abs(along) - 1.0) < 1e-9) ++counts[along > 0.0 ? 1 : 0];
    }
    const std::size_t sense = counts[0] >= counts[1] ? 0 : 1;
    const bool are_most = 2 * counts[sense] > step.moves.size() - 1 && counts[1 - sense] == 0;
    return are_most ? sides[*axis][sense] : std::string_view();
}

std::string holding_words(const Resolved& resolved, const AssemblyOrder& order, Index number) {
    const auto& step = order.steps[number];
    if (step.work != AssemblyWork::joined_on) return {};
    const std::string hold = "on blocks, clamp a batten across or have a second person hold ";
    if (const auto count = free_ends(resolved, step); count > most_alone)
        return std::to_string(count) +
               " pieces are held at one end, the other one is free: prop the free ends " + hold +
               "them, and pin the corner joints first";
    if (const auto count = meeting_at_once(resolved, step); count > most_alone)
        return std::to_string(count) + " joints must meet at once: prop the part " + hold +
               "it, and pin the corner joints first";
    return {};
}

}  // namespace model
