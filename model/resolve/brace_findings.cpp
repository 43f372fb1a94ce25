#include "model/resolve/brace_findings.h"

#include <utility>

namespace model {

Finding brace_of_no_flat(Subject diagonal, const std::string& section) {
    return {.code = "brace_not_flat",
            .severity = Severity::error,
            .concerns = {std::move(diagonal)},
            .what = "a brace lies flat on the members and is cut from flat bar, and \"" + section +
                    "\" is none; it is left out",
            .mend = "choose a stock of flat bar for it"};
}

Finding brace_on_wrong_axis(Subject diagonal, const std::string& plane) {
    return {.code = "wrong_axis",
            .severity = Severity::error,
            .concerns = {std::move(diagonal)},
            .what = "its plane \"" + plane + "\" lies across another axis",
            .mend =
                "give its nodes by planes across the two axes of its face, in the order x, y, "
                "z"};
}

Finding brace_without_length(Subject diagonal) {
    return {.code = "no_length",
            .severity = Severity::error,
            .concerns = {std::move(diagonal)},
            .numbers = {{"length", engine::Length::from_nm(0)}},
            .what = "both its nodes lie in the same place",
            .mend = "choose two nodes that lie apart along both axes of the face"};
}

Finding brace_along_axis(Subject diagonal) {
    return {.code = "brace_along_axis",
            .severity = Severity::error,
            .concerns = {std::move(diagonal)},
            .what = "its nodes lie one straight beside the other, and it would brace nothing",
            .mend =
                "choose nodes that lie apart along both axes of the face, or put a member of "
                "flat bar there"};
}

Finding brace_without_face(Subject diagonal, const std::string& plane) {
    return {.code = "brace_on_no_member",
            .severity = Severity::error,
            .concerns = {std::move(diagonal)},
            .what = "no member lies on the plane \"" + plane + "\" that it could lie against",
            .mend = "choose a face with members, or put members on that plane"};
}

Finding brace_without_room(Subject diagonal, engine::Length between_nodes) {
    return {.code = "brace_without_room",
            .severity = Severity::error,
            .concerns = {std::move(diagonal)},
            .numbers = {{"between_nodes", between_nodes}},
            .what = "nothing is left of it between what stands at its two ends",
            .mend =
                "choose nodes further apart or narrower flat bar, or put it on the other side "
                "of the face"};
}

Finding brace_end_loose(Subject diagonal, std::size_t end, engine::Length reach) {
    return {
        .code = "loose_end",
        .severity = Severity::warning,
        .concerns = {std::move(diagonal)},
        .numbers = {{"end", static_cast<double>(end)}, {"reach", reach}},
        .what = std::string("no fastener holds its ") + (end == 0 ? "first" : "second") + " end",
        .mend =
            "put it on the other side of the face, choose wider bar or a node at which "
            "members meet, or drill it by hand through a member"};
}

Finding panel_on_brace(Subject diagonal,
                       Subject panel,
                       bool is_sure,
                       const std::string& depth_words,
                       engine::Length depth) {
    const bool is_brace = diagonal.kind == SubjectKind::diagonal;
    return {.code = "interference",
            .severity = Severity::error,
            .concerns = {std::move(diagonal), std::move(panel)},
            .numbers = {{"depth", depth}},
            .what = std::string("these two ") + (is_sure ? "would" : "may") +
                    " have to be in the same place: one enters the other by " + depth_words +
                    (is_sure ? "" : ", unless what is cut out of the panel leaves room"),
            .mend = is_brace ? "put the brace on the other side of the face, or take one of them "
                               "out: a sheet that is fastened all round braces the face as well"
                             : "let the panel's bay end in front of the leaning member, cut the "
                               "panel out there, or take one of them out"};
}

}  // namespace model
