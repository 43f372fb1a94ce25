// What is said of corners that no post, leaning member or panel carries.
#include "model/resolve/open_corners.h"

namespace model {
namespace {

std::string place_of(const OpenCorner& corner) {
    return "the corner of \"" + corner.on[1] + "\" and \"" + corner.on[0] + "\" from " +
           (corner.is_short[0] ? "above \"" : "\"") + corner.from + "\" to " +
           (corner.is_short[1] ? "below \"" : "\"") + corner.to + "\"";
}

Finding not_carried(const OpenCorner& corner) {
    return {.code = "corner_not_carried",
            .severity = Severity::warning,
            .what = "nothing carries " + place_of(corner) +
                    ": the rails that end there hold only each other",
            .mend =
                "put a post there, a fixed panel in one of its sides, or a leaning member or a "
                "brace that ends there; where a wall carries it, give a rail a foot at that "
                "end"};
}

Finding on_brace(const OpenCorner& corner) {
    return {
        .code = "corner_on_brace",
        .severity = Severity::note,
        .what = place_of(corner) +
                " is held by a brace only: it carries no weight unless something stands under "
                "it",
        .mend = "where weight rests on it, put a post, a leaning member or a fixed panel there"};
}

}  // namespace

Finding finding_of(const Frame& frame, const OpenCorner& corner) {
    Finding finding = corner.is_braced ? on_brace(corner) : not_carried(corner);
    finding.numbers = {{"length", Length::from_nm(corner.length)}};
    for (const Index rail : corner.rails) {
        finding.concerns.push_back({SubjectKind::member, frame.name, frame.members[rail].name});
    }
    return finding;
}

}  // namespace model
