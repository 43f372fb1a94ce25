#include "tests/model/project/laid_out.h"

#include "model/catalogue/catalogue.h"
#include "model/resolve/resolve.h"

#include <catch2/catch.hpp>

#include <algorithm>

namespace model_tests {

using namespace model;

Project edited(const Project& before, const Edit& edit) {
    auto after = apply(before, edit);
    if (!after) FAIL(to_text(after.error()));
    return *after;
}

engine::Error refused(const Project& before, const Edit& edit) {
    const auto after = apply(before, edit);
    REQUIRE_FALSE(after.has_value());
    return after.error();
}

Project started_box(int shelves, int dividers) {
    const Project empty{
        .stock = {{.name = "angle", .section = "angle 1 x 1 x 1/8", .alloy = "6063-T52"}}};
    StartBoxFrame start{.frame = "box", .stock = "angle"};
    start.width = "36";
    start.depth = "18";
    start.height = "30";
    for (int i = 0; i < shelves; ++i) start.shelf_levels.push_back(std::to_string(9 + i * 8));
    for (int i = 0; i < dividers; ++i) start.dividers.push_back(std::to_string(11 + i * 12));
    return edited(empty, start);
}

const Member& member(const Project& project, const std::string& name) {
    const auto& members = project.frames[0].members;
    const auto found = std::ranges::find(members, name, &Member::name);
    if (found == members.end()) FAIL("there is no member " + name);
    return *found;
}

Resolved resolved(const Project& project) {
    static const auto catalogue = load_catalogue(BARWRIGHT_ASSETS);
    if (!catalogue) FAIL(engine::to_text(catalogue.error()));
    return resolve(project, *catalogue);
}

std::string faults(const Resolved& resolved) {
    std::string text;
    for (const Finding& finding : resolved.findings) {
        if (finding.severity == Severity::note) continue;
        text += finding.code + ": " + where_text(finding) + "\n";
    }
    return text;
}

std::map<std::string, Hands> hands_by_mark(const Resolved& resolved, std::size_t frame) {
    std::map<std::string, Hands> hands;
    for (const Piece& piece : resolved.pieces) {
        if (piece.frame != frame) continue;
        const std::size_t hand = piece.hand == Hand::as_drawn   ? 0
                                 : piece.hand == Hand::opposite ? 1
                                                                : 2;
        ++hands[resolved.marks[piece.mark].name][hand];
    }
    return hands;
}

}  // namespace model_tests
