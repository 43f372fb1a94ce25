#include "model/resolve/foot_findings.h"

#include <utility>

namespace model {
namespace {

Finding left_out(const FootAsked& foot,
                 std::string code,
                 const std::string& why,
                 std::string mend) {
    return {.code = std::move(code),
            .severity = Severity::warning,
            .concerns = {foot.member},
            .what = "its foot at \"" + foot.plane + "\" is left out: " + why,
            .mend = std::move(mend)};
}

}  // namespace

Finding foot_not_square(const FootAsked& foot) {
    return left_out(foot, "foot_not_square", "the member is not cut square there",
                    "let it meet the other member there by another recipe, or put the foot at "
                    "another member");
}

Finding foot_not_outside(const FootAsked& foot) {
    return left_out(foot, "foot_not_outside",
                    "the end does not lie in an outer plane of the frame: another member or a bay "
                    "lies beyond it",
                    "put the foot at a member that ends at the floor or the wall, or rank this "
                    "one so that it runs to the outside");
}

Finding foot_lacks_angle(const FootAsked& foot) {
    return left_out(foot, "foot_lacks_angle", "there is no angle among the stock to cut it from",
                    "add an angle to the stock");
}

Finding foot_lacks_drill(const FootAsked& foot, const MachineScrew& screw) {
    return left_out(foot, "foot_lacks_drill",
                    "no drill at hand makes a clearance hole for its " + screw.id,
                    "get drill " + screw.free_drill + ", or choose another screw for feet");
}

Finding foot_has_no_room(const FootAsked& foot, const MachineScrew& screw) {
    return left_out(foot, "foot_has_no_room",
                    "no angle of the stock has room there beside other members and fasteners, with "
                    "a hole for its " +
                        screw.id + " at the edge distance and a driver above it",
                    "let the member run on beyond the others by the foot's leg (an allowance "
                    "below zero), add a wider angle to the stock, choose a smaller screw for feet, "
                    "or fix the frame through a rail that lies on the floor or the wall");
}

Finding feet_to_fix(std::vector<Subject> members,
                    std::size_t count,
                    const MachineScrew& screw,
                    const Drill& drill) {
    const bool is_one = count == 1;
    return {.code = "feet_to_fix",
            .severity = Severity::note,
            .concerns = std::move(members),
            .numbers = {{"feet", static_cast<double>(count)}, {"hole", drill.diameter}},
            .what = std::to_string(count) + (is_one ? " foot has a hole" : " feet have a hole") +
                    " (drill " + drill.name + ") for a " + screw.id +
                    " or one as thick, by which " + (is_one ? "it is" : "they are") +
                    " fixed to the floor or the wall",
            .mend =
                "before you drill into the vehicle find out what lies behind: wiring, fuel, "
                "gas and brake lines, tanks, airbags; where you cannot see it, do not drill. "
                "How a frame is anchored so that it holds in a crash is for those who are "
                "licensed for it, and local codes decide"};
}

}  // namespace model
