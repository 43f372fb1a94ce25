#include "model/assembly/assembly_order.h"

#include "model/assembly/assembly_problems.h"
#include "model/assembly/flat_parts.h"
#include "model/assembly/frame_steps.h"
#include "model/assembly/loose_steps.h"

#include <algorithm>
#include <iterator>
#include <optional>
#include <tuple>
#include <utility>

namespace model {
namespace {

// The flat parts across one axis as wholes, if they can be made; else those across the axis where
// the fewest must be given up.
TakenApart best_taken_apart(const FrameParts& parts,
                            const PartWays& ways,
                            const ToolAccess& access) {
    std::optional<TakenApart> best;
    const auto faults = [](const TakenApart& taken) {
        return std::tuple(taken.without_way.size(), taken.not_reached.size(), taken.parts_given_up);
    };
    for (const Axis axis : axes_by_worth(parts, parts.all())) {
        auto taken = taken_apart(parts, ways, access, parts_of_frame(parts, axis));
        if (best && !(faults(taken) < faults(*best))) continue;
        best = std::move(taken);
        if (best->parts_given_up == 0) break;
    }
    return std::move(*best);
}

void add_frame(const Project& project,
               const Catalogue& catalogue,
               const Resolved& resolved,
               Index frame,
               AssemblyOrder& order) {
    const FrameParts parts(project, catalogue, resolved, frame);
    const PartWays ways(parts);
    const auto access = tool_access(parts, ways);
    const auto taken = best_taken_apart(parts, ways, access);
    const auto squares = squares_at(parts, ways, order.squares);
    const auto shut_in =
        add_frame_steps(parts, ways, access, taken, squares, order.squares, order.steps);
    auto problems = assembly_problems(project, parts, taken, shut_in);
    order.problems.insert(order.problems.end(), std::make_move_iterator(problems.begin()),
                          std::make_move_iterator(problems.end()));
    for (const auto& it : taken.not_reached) {
        order.joints_not_reached.push_back(parts.joints()[it.joint].joint);
    }
    for (const auto& it : taken.without_way) {
        order.pieces_without_way.push_back(parts.number(it.piece));
    }
}

}  // namespace

AssemblyOrder assembly_order(const Project& project,
                             const Catalogue& catalogue,
                             const Resolved& resolved) {
    AssemblyOrder order{.squares = square_rows(project, resolved)};
    for (Index f = 0; f < project.frames.size() && f < resolved.frames.size(); ++f) {
        if (resolved.frames[f].piece_count == 0) continue;
        add_frame(project, catalogue, resolved, f, order);
    }
    name_loose(resolved, order.steps);
    std::ranges::sort(order.joints_not_reached);
    std::ranges::sort(order.pieces_without_way);
    return order;
}

std::vector<Approach> approaches(const AssemblyOrder& order, const Resolved& resolved) {
    std::vector<Approach> all(resolved.pieces.size());
    for (Index s = 0; s < order.steps.size(); ++s) {
        for (const auto& move : order.steps[s].moves) {
            const bool is_laid_down = move.made_in != no_index && move.along == Travel{};
            if (is_laid_down) continue;
            for (const Index piece : move.pieces) all[piece].arrivals.push_back({s, move.along});
        }
    }
    return all;
}

}  // namespace model
