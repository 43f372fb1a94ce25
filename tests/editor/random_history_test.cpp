// Ten thousand edits, sensible or not, with undo and redo between them.
#include "editor/desk.h"
#include "editor/journal_keeper.h"
#include "model/project/project_json.h"

#include "tests/editor/headless_ui.h"
#include "tests/model/project/random_edit.h"

#include <catch2/catch.hpp>

#include <cstddef>

using tests::TemporaryFolder;

namespace {

constexpr int edits_in_all = 10'000;

// What undo and redo should come to, kept in the plainest way.
struct Expected {
    std::vector<model::Project> states;
    std::size_t at = 0;

    void take(model::Project next) {
        if (next == states[at]) return;
        states.resize(at + 1);
        states.push_back(std::move(next));
        if (states.size() > editor::History::most_steps) states.erase(states.begin());
        at = states.size() - 1;
    }
};

model::Project in_journal(const std::filesystem::path& journal) {
    const auto read = engine::read_records(journal);
    if (!read) FAIL(to_text(read.error()));
    const auto replayed = model::replayed(read->records);
    if (!replayed) FAIL(to_text(replayed.error()));
    return replayed->now;
}

}  // namespace

TEST_CASE("whatever is edited, undone and done again, each state is as it was",
          "[editor][history][random]") {
    const TemporaryFolder folder;
    editor::Desk desk(tests::test_catalogue());
    desk.journal = std::make_shared<editor::JournalKeeper>(folder.path() / "journals");
    editor::replace_project(desk, model_tests::project_to_edit(), {});
    model_tests::Draw draw{20'000};
    Expected expected{{editor::project_of(desk)}};
    int accepted = 0;
    int undone = 0;
    int looked_at = 0;  // in the journal and in a file
    for (int step = 0; step < edits_in_all; ++step) {
        CAPTURE(step);
        const auto what = draw.below(6);
        if (what == 0 && expected.at > 0) {
            desk.history.undo();
            --expected.at;
            ++undone;
        } else if (what == 1 && expected.at + 1 < expected.states.size()) {
            desk.history.redo();
            ++expected.at;
        } else {
            const auto edit = model_tests::random_edit(draw);
            const auto next = model::apply(editor::project_of(desk), edit);
            const auto done = editor::submit(desk, editor::change_of(edit));
            REQUIRE(done.has_value() == next.has_value());
            if (!next) continue;
            ++accepted;
            expected.take(*next);
        }
        REQUIRE(editor::project_of(desk) == expected.states[expected.at]);
        if (step % 997 == 0) desk.history.mark_saved();
        if (step % 5 != 0) continue;
        desk.journal->keep(desk, true);
        if (step % 100 != 0 || desk.history.is_saved()) continue;
        ++looked_at;
        REQUIRE(in_journal(desk.journal->path()) == editor::project_of(desk));
        const auto text = model::to_json_text(editor::project_of(desk));
        const auto read = model::read_project_json(text);
        REQUIRE(read);
        REQUIRE(*read == editor::project_of(desk));
        REQUIRE(model::to_json_text(*read) == text);
    }
    CHECK(accepted > edits_in_all / 10);
    CHECK(undone > edits_in_all / 20);
    CHECK(looked_at > 20);
}
