#include "model/resolve/leaning_findings.h"

#include <utility>

namespace model {

Finding leaning_of_no_angle(Subject leaning, const std::string& section) {
    return {.code = "leaning_not_angle",
            .severity = Severity::error,
            .concerns = {std::move(leaning)},
            .what =
                "a leaning member has one leg along the face and one that stands off it, and "
                "\"" +
                section + "\" is no angle; it is left out",
            .mend =
                "choose a stock of angle for it; flat bar that only has to lie along the face is a "
                "brace"};
}

Finding leaning_along_axis(Subject leaning) {
    return {
        .code = "does_not_lean",
        .severity = Severity::error,
        .concerns = {std::move(leaning)},
        .what =
            "its nodes lie one straight beside the other, so that it does not lean; it is "
            "left out",
        .mend = "choose nodes that lie apart along both axes of the face, or put a member there"};
}

Finding leaning_without_face(Subject leaning, const std::string& plane) {
    return {.code = "leaning_on_no_member",
            .severity = Severity::error,
            .concerns = {std::move(leaning)},
            .what = "no member lies on the plane \"" + plane + "\" that it could be fastened to",
            .mend = "choose a face with members, or put level members on that plane"};
}

Finding leaning_without_room(Subject leaning, engine::Length between_nodes) {
    return {.code = "leaning_without_room",
            .severity = Severity::error,
            .concerns = {std::move(leaning)},
            .numbers = {{"between_nodes", between_nodes}},
            .what = "nothing is left of it between what it stops at",
            .mend = "choose nodes further apart, or narrower angle"};
}

Finding leaning_moved_in(Subject leaning, const std::string& moved_in_words, engine::Length by) {
    return {.code = "leaning_moved_in",
            .severity = Severity::note,
            .concerns = {std::move(leaning)},
            .numbers = {{"moved_in", by}},
            .what = "its heel lies " + moved_in_words +
                    " beside the line between its nodes, on the side to which its leg points, so "
                    "that it clears what stands there",
            .mend = "nothing is to be done; it counts where you mark it out on the level members"};
}

Finding leaning_end_loose(Subject leaning, std::size_t end, engine::Length reach) {
    return {
        .code = "loose_end",
        .severity = Severity::warning,
        .concerns = {std::move(leaning)},
        .numbers = {{"end", static_cast<double>(end)}, {"reach", reach}},
        .what = std::string("no fastener holds its ") + (end == 0 ? "first" : "second") + " end",
        .mend =
            "let a level member with a leg in that face run through the node, turn the leg of one "
            "that is there into the face, or let it point the other way, up or down, where it "
            "stands clear; a wider leg or a thinner fastener may leave room for two"};
}

}  // namespace model
