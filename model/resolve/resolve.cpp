// The road from what is stated to what follows, in one page. Each step has a file of its own.
#include "model/resolve/resolve.h"

#include "model/resolve/bar_room.h"
#include "model/resolve/between_nodes.h"
#include "model/resolve/brace_hold.h"
#include "model/resolve/check_stated.h"
#include "model/resolve/connected.h"
#include "model/resolve/fasten.h"
#include "model/resolve/foot.h"
#include "model/resolve/holds_error.h"
#include "model/resolve/interference.h"
#include "model/resolve/join_members.h"
#include "model/resolve/keep_apart.h"
#include "model/resolve/lap.h"
#include "model/resolve/mark.h"
#include "model/resolve/member_plates.h"
#include "model/resolve/open_corners.h"
#include "model/resolve/panels.h"
#include "model/resolve/setting_order.h"
#include "model/resolve/shim_room.h"
#include "model/resolve/skeleton.h"
#include "model/resolve/splice.h"
#include "model/resolve/stocks_alike.h"
#include "model/resolve/values.h"

#include <iterator>
#include <unordered_set>
#include <utility>

namespace model {
namespace {

void report_frames_of_one_name(const Project& project, std::vector<Finding>& findings) {
    std::unordered_set<std::string_view> names;
    for (const auto& frame : project.frames) {
        if (names.insert(frame.name).second) continue;
        findings.push_back({.code = "duplicate_name",
                            .severity = Severity::error,
                            .concerns = {{SubjectKind::frame, {}, frame.name}},
                            .what = "another frame has the same name",
                            .mend = "rename one of them"});
    }
}

enum class AtError : std::uint8_t { go_on, end };

Attempt resolve_and(AtError at_error, const Project& project, const Catalogue& catalogue) {
    Attempt attempt;
    Resolved& out = attempt.resolved;
    const auto ends_here = [&] {
        if (at_error == AtError::end && holds_error(out.findings)) attempt.is_whole = false;
        return !attempt.is_whole;
    };
    Values values(project, out);
    out.shop = shop_values(project, values, out.findings);
    const auto shapes = stock_shapes(project, catalogue, out.findings);
    check_shop(project.shop, catalogue, out.findings);
    check_room(project, values, out.findings);
    report_frames_of_one_name(project, out.findings);

    BarRoom bar_room(project, out);
    std::vector<FixingHole> fixing_holes;
    std::vector<LapPlan> plans;
    out.frames.reserve(project.frames.size());
    for (Index f = 0; f < project.frames.size(); ++f) {
        const Frame& frame = project.frames[f];
        check_kept_things(project, frame, values, out.findings);
        out.frames.push_back(frame_values(frame, values));
        if (ends_here()) continue;
        ResolvedFrame& placed = out.frames.back();
        placed.first_piece = static_cast<Index>(out.pieces.size());
        const auto bars = bars_of(project, frame, placed, shapes, values, out.findings);
        if (ends_here()) continue;
        JointOverrides overrides(frame, out.findings);
        auto [skeleton, laps] = join_members({project, catalogue, out.shop, shapes}, f, bars,
                                             overrides, out.outlines, out.findings);
        add_feet({project, catalogue, out.shop, shapes}, out, skeleton, frame, out.outlines, laps,
                 fixing_holes, out.findings);
        splice_long_pieces({project, catalogue, out.shop, shapes}, bar_room, skeleton, frame,
                           out.outlines, laps, out.findings);
        keep_shims_clear(skeleton, laps);
        add_leaning({project, catalogue, out.shop, shapes}, skeleton, frame, placed, out, laps);
        const auto told_before = out.findings.size();
        add_braces({project, catalogue, out.shop, shapes}, skeleton, frame, placed, out, laps);
        const Slants slants{out.outlines, out.leans};
        const auto tree = tree_of_pieces(skeleton);
        report_interference(project, skeleton, slants, tree, out.findings);
        if (ends_here()) continue;
        auto planned =
            plan_fasteners(project, catalogue, out.shop, skeleton, tree, laps, slants,
                           placed.first_piece, overrides, out.findings, at_error == AtError::end);
        if (ends_here()) continue;
        report_loose_ends(skeleton, frame,
                          holding_laps(skeleton, laps, planned, placed.first_piece), told_before,
                          out.findings);
        report_loose_braces(slants, skeleton, frame, planned, placed.first_piece, out.findings);
        overrides.report_unused(out.findings);
        plans.insert(plans.end(), std::make_move_iterator(planned.begin()),
                     std::make_move_iterator(planned.end()));
        out.pieces.insert(out.pieces.end(), skeleton.pieces.begin(), skeleton.pieces.end());
        placed.piece_count = static_cast<Index>(skeleton.pieces.size());
    }
    if (!attempt.is_whole) return attempt;
    const auto early = early_joints(plans);
    const auto meeting =
        place_fasteners(catalogue, first_stocks_alike(project), std::move(plans), out);
    drill_feet(fixing_holes, out);
    put_in_panels(project, catalogue, values, out);
    report_panels_on_braces(project, out);
    mark_pieces(project, catalogue, out);
    report_fasteners_that_meet(project, meeting, out);
    report_setting_order(project, early, out);
    report_loose_groups(project, out);
    report_open_corners(project, catalogue, out);
    report_interference_of_frames(project, out, out.findings);
    return attempt;
}

}  // namespace

Resolved resolve(const Project& project, const Catalogue& catalogue) {
    return resolve_and(AtError::go_on, project, catalogue).resolved;
}

Attempt resolve_until_error(const Project& project, const Catalogue& catalogue) {
    return resolve_and(AtError::end, project, catalogue);
}

}  // namespace model
