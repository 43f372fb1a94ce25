#include "editor/history.h"

#include <catch2/catch.hpp>

using editor::History;

namespace {

model::Project named(const std::string& name) { return {.name = name}; }

}  // namespace

TEST_CASE("undo gives back the very project that was there, with its revision",
          "[editor][history]") {
    History history(named("a"));
    const auto first = history.now();
    const auto revision = history.revision();
    history.record("Rename", named("b"));
    CHECK(history.revision() != revision);
    CHECK(history.undo_label() == "Rename");
    history.undo();
    CHECK(history.now() == first);
    CHECK(history.revision() == revision);
    CHECK(history.redo_label() == "Rename");
    history.redo();
    CHECK(history.now()->name == "b");
}

TEST_CASE("steps with one merge key are one step", "[editor][history]") {
    History history(named("a"));
    history.record("Drag", named("b"), "drag 1");
    history.record("Drag", named("c"), "drag 1");
    history.record("Drag", named("d"), "drag 1");
    history.undo();
    CHECK(history.now()->name == "a");
    CHECK_FALSE(history.can_undo());
}

TEST_CASE("a drag that comes back to its beginning leaves no step", "[editor][history]") {
    History history(named("a"));
    history.record("Drag", named("b"), "drag 1");
    history.record("Drag", named("a"), "drag 1");
    CHECK_FALSE(history.can_undo());
    CHECK(history.is_saved());
}

TEST_CASE("two drags with different keys are two steps", "[editor][history]") {
    History history(named("a"));
    history.record("Drag", named("b"), "drag 1");
    history.end_merge();
    history.record("Drag", named("c"), "drag 2");
    history.undo();
    CHECK(history.now()->name == "b");
}

TEST_CASE("a merge never swallows the saved step", "[editor][history]") {
    History history(named("a"));
    history.record("Drag", named("b"), "drag 1");
    history.mark_saved();
    history.record("Drag", named("c"), "drag 1");
    CHECK_FALSE(history.is_saved());
    history.undo();
    CHECK(history.is_saved());
}

TEST_CASE("a new step after undo takes the place of what could be redone", "[editor][history]") {
    History history(named("a"));
    history.record("One", named("b"));
    history.undo();
    history.record("Two", named("c"));
    CHECK_FALSE(history.can_redo());
    CHECK(history.now()->name == "c");
}

TEST_CASE("an edit that changes nothing is no step", "[editor][history]") {
    History history(named("a"));
    history.record("Nothing", named("a"));
    CHECK_FALSE(history.can_undo());
}

TEST_CASE("the oldest steps go when there are too many", "[editor][history]") {
    History history(named("first"));
    for (std::size_t i = 0; i < 2 * History::most_steps; ++i) {
        history.record("Step", named(std::to_string(i)));
    }
    std::size_t steps = 0;
    for (; history.can_undo(); ++steps) history.undo();
    CHECK(steps == History::most_steps - 1);
}

TEST_CASE("a drag that comes back to its beginning leaves what could be redone",
          "[editor][history]") {
    History history(named("a"));
    history.record("Rename", named("b"));
    history.undo();
    history.record("Drag", named("c"), "drag 1");
    CHECK_FALSE(history.can_redo());
    history.record("Drag", named("d"), "drag 1");
    history.record("Drag", named("a"), "drag 1");
    CHECK(history.redo_label() == "Rename");
    history.record("Drag", named("e"), "drag 1");
    CHECK_FALSE(history.can_redo());
    history.record("Drag", named("a"), "drag 1");
    REQUIRE(history.can_redo());
    history.redo();
    CHECK(history.now()->name == "b");
}
