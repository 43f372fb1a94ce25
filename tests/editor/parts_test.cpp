// Parts that are no bars of members: chosen, named, coloured and laid flat like all pieces.
#include "editor/places/piece_words.h"
#include "editor/selection.h"
#include "editor/skeleton_scene.h"
#include "model/resolve/mark.h"
#include "model/schedule/tables.h"
#include "model/schedule/unrolled_piece.h"

#include "tests/editor/headless_ui.h"
#include "tests/support/hand_made.h"

#include <catch2/catch.hpp>

#include <array>

using model::Index;
using model::PieceKind;

namespace {

constexpr std::array<PieceKind, 5> of_bar{PieceKind::brace, PieceKind::cleat, PieceKind::strap,
                                          PieceKind::backing, PieceKind::foot};

// Pieces of every shape, each a part of some kind that a joint of two members has made.
struct Parts {
    tests::HandMade made = tests::hand_made(*tests::test_catalogue());
    editor::Derived now;

    Parts() {
        auto& project = made.project;
        project.frames[0].diagonals = {{.name = "back"}};
        project.frames[0].panels = {{.name = "door"}};
        auto& pieces = made.resolved.pieces;
        for (Index i = 0; i < pieces.size(); ++i) {
            auto& piece = pieces[i];
            piece.member = model::no_index;
            piece.serves = {i % 3, i % 3 + 1};
            piece.stated = 0;
            if (!model::is_of_sheet(piece.kind)) piece.kind = of_bar[i % of_bar.size()];
        }
        made.resolved.frames[0].piece_count = static_cast<Index>(pieces.size());
        model::mark_pieces(project, made.catalogue, made.resolved);
        now.project = std::make_shared<const model::Project>(project);
        now.resolved = made.resolved;
        now.cuts = model::cut_rows(project, made.catalogue, made.resolved);
        now.drills = model::drill_rows(project, made.catalogue, made.resolved);
    }

    Index count() const { return static_cast<Index>(now.resolved.pieces.size()); }
};

}  // namespace

TEST_CASE("every part has a name of its own by which it is found again", "[editor][parts]") {
    const Parts parts;
    const auto& [project, resolved] = std::pair{*parts.now.project, parts.now.resolved};
    std::vector<Index> all;
    for (Index i = 0; i < parts.count(); ++i) {
        const auto name = editor::name_of_piece(project, resolved, i);
        CAPTURE(name.what, name.part);
        CHECK_FALSE(name.what.empty());
        CHECK(editor::find_piece(project, resolved, name) == i);
        all.push_back(i);
    }
    const auto selection = editor::selection_of(project, resolved, all);
    CHECK(editor::selected_pieces(project, resolved, selection) == all);
    for (const Index i : all) {
        CHECK(selection.pieces[i] == editor::name_of_piece(project, resolved, i));
    }
}

TEST_CASE("every part is called by what it is and where it goes", "[editor][parts]") {
    const Parts parts;
    const auto words = editor::member_words(parts.now, 1);
    const auto& members = parts.now.project->frames[0].members;
    CHECK(words == "cleat at " + members[1].name + " and " + members[2].name);
    CHECK(editor::piece_words(parts.now, 1).find(words) != std::string::npos);
}

TEST_CASE("every part is in the picture and can be picked", "[editor][parts]") {
    const Parts parts;
    auto resolved = parts.now.resolved;
    resolved.fasteners.clear();  // the one there is stands for all and is in no joint
    const auto scene =
        editor::skeleton_scene(*parts.now.project, parts.made.catalogue, resolved, {});
    std::vector<bool> is_there(parts.count());
    for (const auto& item : scene.solid.items) {
        if (item.pick_id < parts.count()) is_there[item.pick_id] = true;
    }
    CHECK(std::find(is_there.begin(), is_there.end(), false) == is_there.end());
}

TEST_CASE("every part is laid flat with all its holes and its own outline", "[editor][parts]") {
    const Parts parts;
    for (Index i = 0; i < parts.count(); ++i) {
        const auto& piece = parts.now.resolved.pieces[i];
        const auto flat = model::unrolled_piece(parts.now.resolved, parts.made.catalogue, i);
        CAPTURE(i, editor::member_words(parts.now, i));
        CHECK(flat.holes.size() == piece.hole_count);
        CHECK(flat.width > 0.0);
        const bool is_outlined = piece.plates[0].outline != model::no_index;
        if (is_outlined) CHECK_FALSE(flat.loops.empty());
        for (const auto& loop : flat.loops) {
            for (const auto& [across, down] : loop) {
                CHECK(across >= -1e-6);
                CHECK(across <= flat.width + 1e-6);
                CHECK(down >= -1e-6);
                CHECK(down <= flat.length + 1e-6);
            }
        }
    }
}

TEST_CASE("a finding about a joint, a diagonal or a panel chooses its parts", "[editor][parts]") {
    const Parts parts;
    const auto& project = *parts.now.project;
    const auto& members = project.frames[0].members;
    const auto chosen_by = [&](model::SubjectKind kind, const std::string& name) {
        const auto selection = editor::selection_of_subjects(
            project, parts.now.resolved, {{kind, project.frames[0].name, name}});
        return editor::selected_pieces(project, parts.now.resolved, selection);
    };
    const auto at_joint =
        chosen_by(model::SubjectKind::joint, members[1].name + " + " + members[0].name);
    REQUIRE_FALSE(at_joint.empty());
    for (const Index i : at_joint) CHECK(parts.now.resolved.pieces[i].serves[0] == 0);
    for (const Index i : chosen_by(model::SubjectKind::diagonal, "back"))
        CHECK(parts.now.resolved.pieces[i].kind == PieceKind::brace);
    const auto panels = chosen_by(model::SubjectKind::panel, "door");
    REQUIRE(panels.size() == 1);
    CHECK(parts.now.resolved.pieces[panels[0]].kind == PieceKind::panel);
}
