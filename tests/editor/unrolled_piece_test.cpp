
#include "model/schedule/unrolled_piece.h"

#include "editor/places/hole_signs.h"
#include "model/schedule/tables.h"

#include "tests/editor/headless_ui.h"

#include <catch2/catch.hpp>

#include <array>
#include <map>
#include <string>

using model::unrolled_piece;
using tests::HeadlessUi;

namespace {

// A desk with a box of that section.
struct Box {
    editor::Desk desk{tests::test_catalogue()};

    Box() { tests::start_box(desk); }

    const editor::Derived& now() { return editor::derived(desk); }
};

}  // namespace

TEST_CASE("an angle opens out into its two legs with the heel between them", "[editor][unrolled]") {
    Box box;
    const auto flat = unrolled_piece(box.now().resolved, *box.desk.catalogue, 0);
    REQUIRE(flat.walls.size() == 2);
    CHECK(flat.walls[0].heel == Approx(flat.walls[1].heel));
    CHECK(flat.walls[0].left() == Approx(0.0));
    CHECK(flat.walls[1].right() == Approx(flat.width));
    const auto& section = box.desk.catalogue->sections[box.now().resolved.pieces[0].section];
    CHECK(flat.width == Approx(section.a.mm() + section.b.mm()));
}

TEST_CASE("every hole lies on its wall, as far from the heel as its gauge says",
          "[editor][unrolled]") {
    Box box;
    const auto& resolved = box.now().resolved;
    for (model::Index i = 0; i < resolved.pieces.size(); ++i) {
        const auto flat = unrolled_piece(box.now().resolved, *box.desk.catalogue, i);
        CHECK(flat.holes.size() == resolved.pieces[i].hole_count);
        for (const auto& hole : flat.holes) {
            const auto& wall = flat.walls[hole.wall];
            const double gauge = engine::Length::from_nm(resolved.holes[hole.hole].gauge).mm();
            CHECK(std::abs(hole.across - wall.heel) == Approx(gauge));
            CHECK(hole.across > wall.left());
            CHECK(hole.across < wall.right());
            CHECK(hole.down > 0.0);
            CHECK(hole.down < flat.length);
        }
    }
}

TEST_CASE("the opposite hand has its legs on the same sides and its datum end below",
          "[editor][unrolled]") {
    Box box;
    auto mirrored = box.now();
    mirrored.resolved.pieces[0].run_sense *= -1;
    const auto drawn = unrolled_piece(box.now().resolved, *box.desk.catalogue, 0);
    const auto other = unrolled_piece(mirrored.resolved, *box.desk.catalogue, 0);
    CHECK(drawn.datum_is_below != other.datum_is_below);
    CHECK(drawn.walls[0].name == other.walls[0].name);
    CHECK(drawn.walls[1].name == other.walls[1].name);
    REQUIRE(drawn.holes.size() == other.holes.size());
    REQUIRE_FALSE(drawn.holes.empty());
    for (std::size_t i = 0; i < drawn.holes.size(); ++i) {
        CHECK(drawn.holes[i].across == Approx(other.holes[i].across));
        CHECK(drawn.holes[i].down == Approx(other.length - other.holes[i].down));
    }
}

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

TEST_CASE("a leg lies on the side that it has to an eye within the angle", "[editor][unrolled]") {
    // Run up, a to the right (x), b away from the eye (y): right-handed. Seen from within with the
    // datum end above, a runs to the right.
    Box box;
    auto now = box.now();
    auto& piece = now.resolved.pieces[0];
    piece.run = model::Axis::z;
    piece.run_sense = 1;
    piece.a_axis = model::Axis::x;
    piece.a_sense = 1;
    piece.b_sense = 1;
    const auto flat = unrolled_piece(now.resolved, *box.desk.catalogue, 0);
    CHECK(flat.walls[0].name == "leg b");
    CHECK(flat.walls[1].name == "leg a");
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
