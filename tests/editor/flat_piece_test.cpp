#include "editor/places/hole_signs.h"
#include "model/schedule/tables.h"

#include "tests/editor/headless_ui.h"

#include <catch2/catch.hpp>

#include <array>
#include <map>
#include <string>

using tests::HeadlessUi;

TEST_CASE("gauge and hand stand beside the holes of every leg", "[editor][unrolled]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.desk.ui.selection = editor::selection_of(editor::project_of(ui.desk), ui.now().resolved,
                                                std::vector<model::Index>{0});
    ui.settle();
    const auto& now = ui.now();
    const auto& piece = now.resolved.pieces[0];
    for (const auto& row : now.drills) {
        if (row.mark != piece.mark || row.hand != piece.hand) continue;
        const std::string gauge = model::length_text(*now.project, row.gauge);
        CHECK(ui.has("Piece/" + row.leg + " fence " + gauge));
        CHECK_THAT(ui.item("Piece/hand of " + row.leg).value,
                   Catch::EndsWith(row.datum_end == model::TableEnd::left ? "left" : "right"));
    }
}

TEST_CASE("fence settings side by side do not lie on one another", "[editor][unrolled]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    const auto pieces = static_cast<model::Index>(ui.now().resolved.pieces.size());
    for (model::Index i = 0; i < pieces; ++i) {
        ui.desk.ui.selection = editor::selection_of(editor::project_of(ui.desk), ui.now().resolved,
                                                    std::vector<model::Index>{i});
        ui.settle();
        std::vector<editor::ItemRecord> labels;
        for (const auto& [name, item] : ui.items()) {
            if (name.find(" fence ") != std::string::npos) labels.push_back(item);
        }
        REQUIRE_FALSE(labels.empty());
        for (std::size_t a = 0; a < labels.size(); ++a) {
            for (std::size_t b = 0; b < a; ++b) {
                const bool are_apart =
                    labels[a].right <= labels[b].left || labels[b].right <= labels[a].left ||
                    labels[a].bottom <= labels[b].top || labels[b].bottom <= labels[a].top;
                CHECK(are_apart);
            }
        }
    }
}

TEST_CASE("holes for rivets, for screws and for threads are drawn apart, with a legend",
          "[editor][unrolled]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    const auto& project = editor::project_of(ui.desk);
    const auto& joint = ui.now().resolved.joints.front();
    const auto name_of_piece = [&](std::size_t i) {
        const auto& piece = ui.now().resolved.pieces[joint.pieces[i]];
        return project.frames[0].members[piece.member].name;
    };
    const std::array members{name_of_piece(0), name_of_piece(1)};
    const auto pieces = joint.pieces;
    const auto choose = [&](model::Index piece) {
        ui.desk.ui.selection = editor::selection_of(*ui.now().project, ui.now().resolved, {piece});
        ui.settle();
    };
    choose(pieces[0]);
    CHECK(ui.has("Piece/sign: rivet"));
    CHECK_FALSE(ui.has("Piece/sign: tapped"));
    REQUIRE(editor::submit(
        ui.desk,
        editor::change_of(model::PutJoint{
            project.frames[0].name,
            {.members = members, .removable = true, .screw_hold = model::ScrewHold::tapped}})));
    std::map<editor::HoleSign, int> signs;
    for (const auto piece : pieces) {
        choose(piece);
        const auto& resolved = ui.now().resolved;
        const auto legend = editor::hole_legend(resolved, resolved.pieces[piece]);
        for (const auto sign : legend.signs) {
            ++signs[sign];
            CHECK(ui.item("Piece/sign: " + std::string(editor::words_of(sign))).visible);
        }
    }
    CHECK(signs[editor::HoleSign::rivet] == 2);
    CHECK(signs[editor::HoleSign::tapped] == 1);
    CHECK(signs[editor::HoleSign::screw] == 1);
    const auto& resolved = ui.now().resolved;
    for (const auto& hole : resolved.holes) {
        const bool is_tapped = hole.tap != model::no_index;
        CHECK((editor::sign_of(resolved, hole) == editor::HoleSign::tapped) == is_tapped);
    }
}
