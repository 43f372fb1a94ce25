// Of each thing that a step puts on it is known whether it is held, and in which step if not.
#include "model/assembly/loose_steps.h"

#include "engine/files/csv.h"
#include "model/assembly/assembly_csv.h"
#include "model/assembly/step_words.h"

#include "tests/model/assembly/box_pile.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <string>
#include <vector>

namespace {

using model::AssemblyStep;
using model::AssemblyWork;
using model::Index;
using tests::BoxPile;

// A floor with five boxes side by side on it, each screwed to it; the fourth one to the third as
// well. The steps are made by hand.
class Shelf {
public:
    Shelf() {
        floor_ = pile_.piece({BoxPile::box({0, 0, 0}, {5, 1, 1})});
        for (tests::Nm x = 0; x < 5; ++x) {
            boxes_.push_back(pile_.piece({BoxPile::box({x, 0, 1}, {x + 1, 1, 2})}));
            screws_.push_back(pile_.screw(boxes_.back(), floor_, {x * 64 + 32, 32, 96}, 2, -1));
        }
        between_ = pile_.screw(boxes_[3], boxes_[2], {3 * 64 + 32, 32, 96}, 0, -1);
        order_.steps.push_back(AssemblyStep{.moves = {{.pieces = {floor_}}}});
    }

    void screw_on(const std::vector<std::size_t>& boxes, const std::vector<Index>& screws) {
        AssemblyStep step{.work = AssemblyWork::screwed_on};
        for (const auto box : boxes)
            step.moves.push_back({.pieces = {boxes_[box]}, .along = {0.0, 0.0, -1.0}});
        for (const Index screw : screws) step.sets.push_back({screw, false});
        order_.steps.push_back(std::move(step));
    }

    void name() { model::name_loose(pile_.resolved(), order_.steps); }

    Index screw(std::size_t box) const { return screws_[box]; }
    Index between() const { return between_; }
    const std::vector<AssemblyStep>& steps() const { return order_.steps; }

    std::vector<std::string> told_loose(Index step) const {
        const model::StepWording words(pile_.project(), BoxPile::catalogue(), pile_.resolved(),
                                       order_);
        std::vector<std::string> told;
        for (const auto& line : words.lines(step))
            if (line.text.find("loose") != std::string::npos) told.push_back(line.text);
        return told;
    }

    // Of what is put on, by the file, in its order.
    std::vector<std::string> notes() const {
        const auto table =
            engine::read_csv(model::assembly_csv(pile_.project(), BoxPile::catalogue(),
                                                 pile_.resolved(), order_))
                .value();
        std::vector<std::string> notes;
        for (const auto& row : table.rows)
            if (row[4] == "put on") notes.push_back(row.back());
        return notes;
    }

private:
    BoxPile pile_;
    Index floor_ = 0;
    std::vector<Index> boxes_;
    std::vector<Index> screws_;
    Index between_ = 0;
    model::AssemblyOrder order_;
};

}  // namespace

TEST_CASE("of what one step puts on only that is loose which nothing in it holds",
          "[model][assembly][loose]") {
    Shelf shelf;
    shelf.screw_on({0, 1, 2}, {shelf.screw(0)});
    shelf.screw_on({3}, {shelf.screw(1), shelf.screw(3)});
    shelf.screw_on({}, {shelf.screw(2)});
    shelf.name();
    const auto& mixed = shelf.steps()[1];
    CHECK(mixed.work == AssemblyWork::screwed_on);
    CHECK(mixed.moves[0].held_in == 1);
    CHECK(mixed.moves[1].held_in == 2);
    CHECK(mixed.moves[2].held_in == 3);
    CHECK(shelf.told_loose(1) == std::vector<std::string>{"p2 lies loose until step 3 holds it",
                                                          "p3 lies loose until step 4 holds it"});
    CHECK(shelf.told_loose(2).empty());
    CHECK(shelf.notes() ==
          std::vector<std::string>{"", "loose until step 3", "loose until step 4", ""});
}

TEST_CASE("a step is put on loose where all of it is, and each says until when",
          "[model][assembly][loose]") {
    Shelf shelf;
    shelf.screw_on({0, 1, 2}, {});
    shelf.screw_on({}, {shelf.screw(0), shelf.screw(1)});
    shelf.screw_on({}, {shelf.screw(2)});
    shelf.name();
    CHECK(shelf.steps()[1].work == AssemblyWork::put_on_loose);
    CHECK(shelf.told_loose(1) ==
          std::vector<std::string>{"p1 and p2 lie loose until step 3 holds them",
                                   "p3 lies loose until step 4 holds it"});
}

TEST_CASE("two that are screwed to each other alone are loose together",
          "[model][assembly][loose]") {
    Shelf shelf;
    shelf.screw_on({2, 3}, {shelf.between()});
    shelf.screw_on({}, {shelf.screw(2), shelf.screw(3)});
    shelf.name();
    CHECK(shelf.steps()[1].work == AssemblyWork::put_on_loose);
    CHECK(shelf.told_loose(1) ==
          std::vector<std::string>{"They lie loose until step 3 holds them"});
}

TEST_CASE("one that is screwed to what is held is held too", "[model][assembly][loose]") {
    Shelf shelf;
    shelf.screw_on({2, 3}, {shelf.screw(2), shelf.between()});
    shelf.screw_on({}, {shelf.screw(3)});
    shelf.name();
    CHECK(shelf.steps()[1].work == AssemblyWork::screwed_on);
    CHECK(shelf.told_loose(1).empty());
}

TEST_CASE("what nothing ever holds is called loose without a step", "[model][assembly][loose]") {
    Shelf shelf;
    shelf.screw_on({4}, {});
    shelf.name();
    CHECK(shelf.steps()[1].moves[0].held_in == model::no_index);
    CHECK(shelf.told_loose(1) == std::vector<std::string>{"It lies loose"});
    CHECK(shelf.notes() == std::vector<std::string>{"loose"});
}
