// What the tests of resolve share: the shipped catalogue and a few ways to look things up.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/resolve/resolve.h"

#include "tests/support/frame_builder.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

namespace tests {

inline const model::Catalogue& shipped_catalogue() {
    static const auto catalogue = model::load_catalogue(BARWRIGHT_ASSETS);
    REQUIRE(catalogue);
    return *catalogue;
}

inline model::Resolved resolved(const model::Project& project) {
    return model::resolve(project, shipped_catalogue());
}

// A project of one frame in which all bar is 1 x 1 x 1/8 in angle, stock "main".
inline model::Project project_of(FrameBuilder& builder) {
    model::Project project;
    project.stock = {stock_of("main", "angle 1 x 1 x 1/8", "6063-T52")};
    project.frames = {builder.frame()};
    return project;
}

// The pieces of a member of the first frame, in order along its run.
inline std::vector<model::Piece> pieces_of(const model::Project& project,
                                           const model::Resolved& resolved,
                                           std::string_view member) {
    std::vector<model::Piece> pieces;
    for (const auto& piece : resolved.pieces) {
        if (piece.member == model::no_index || piece.frame != 0) continue;
        if (project.frames[0].members[piece.member].name == member) pieces.push_back(piece);
    }
    return pieces;
}

inline long count_of(const model::Resolved& resolved, std::string_view code) {
    return std::count_if(resolved.findings.begin(), resolved.findings.end(),
                         [&](const model::Finding& f) { return f.code == code; });
}

inline const model::Finding* first_of(const model::Resolved& resolved, std::string_view code) {
    const auto found = std::find_if(resolved.findings.begin(), resolved.findings.end(),
                                    [&](const model::Finding& f) { return f.code == code; });
    return found == resolved.findings.end() ? nullptr : &*found;
}

}  // namespace tests
