// The program killed at any moment: what it had said to be done is in the file or in the journal.
#include "editor/desk_files.h"
#include "editor/journal_keeper.h"
#include "editor/left_behind.h"
#include "editor/open_project.h"

#include "tests/editor/headless_ui.h"
#include "tests/model/project/full_project.h"
#include "tests/support/dice.h"

#include <catch2/catch.hpp>
#include <fcntl.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <csignal>
#include <cstdlib>
#include <optional>

using tests::TemporaryFolder;
namespace fs = std::filesystem;

namespace {

constexpr std::uint32_t saves_after = 6;  // edits

// Edits and saves until it is killed; tells through the pipe how many edits were made and kept.
[[noreturn]] void edit_for_ever(const fs::path& folder, int told) {
    editor::Desk desk(tests::test_catalogue());
    desk.journal = std::make_shared<editor::JournalKeeper>(folder / "journals");
    editor::replace_project(desk, model_tests::full_project(), {});
    const auto file = folder / "van.json";
    for (std::int32_t edit = 1;; ++edit) {
        const model::SetTitle title{"counter", std::to_string(edit)};
        if (!editor::submit(desk, editor::change_of(title))) std::_Exit(1);
        desk.journal->keep(desk, true);
        if (::write(told, &edit, sizeof edit) != sizeof edit) std::_Exit(2);
        if (static_cast<std::uint32_t>(edit) % saves_after != 0) continue;
        if (!editor::save_to(desk, file)) std::_Exit(3);
        desk.journal->keep(desk, true);
    }
}

int number_in(const model::Project& project) { return std::atoi(project.note.c_str()); }

// The last number that came whole; `last` where none does.
int last_told(int pipe, std::int32_t last) {
    std::int32_t number = 0;
    while (::read(pipe, &number, sizeof number) == sizeof number) last = number;
    return last;
}

// How many edits are in the file; none where it is not whole.
std::optional<int> in_file(const fs::path& file) {
    if (!fs::exists(file)) return 0;
    const auto project = editor::open_project(file);
    return project ? std::optional(number_in(*project)) : std::nullopt;
}

int in_journals(const fs::path& folder) {
    int most = 0;
    for (const auto& left : editor::left_behind(folder)) {
        const auto read = engine::read_records(left.journal);
        if (!read) continue;
        if (const auto journal = model::replayed(read->records))
            most = std::max(most, number_in(journal->now));
    }
    return most;
}

struct Killed {
    int told = 0;
    std::optional<int> in_file;
    int in_journals = 0;
};

// So long after it has told of so many edits.
Killed killed_after(std::uint32_t edits, useconds_t microseconds) {
    const TemporaryFolder folder;
    int ends[2];
    REQUIRE(::pipe(ends) == 0);
    REQUIRE(::fcntl(ends[1], F_SETPIPE_SZ, 1 << 20) > 0);  // nobody reads until the end
    const pid_t child = ::fork();
    if (child == 0) edit_for_ever(folder.path(), ends[1]);
    ::close(ends[1]);
    std::int32_t told = 0;
    for (std::uint32_t i = 0; i < edits; ++i) {
        if (::read(ends[0], &told, sizeof told) != sizeof told) break;
    }
    ::usleep(microseconds);
    ::kill(child, SIGKILL);
    int status = 0;
    ::waitpid(child, &status, 0);
    REQUIRE(WIFSIGNALED(status));
    Killed killed{last_told(ends[0], told), in_file(folder.path() / "van.json"), 0};
    killed.in_journals = in_journals(folder.path() / "journals");
    ::close(ends[0]);
    return killed;
}

}  // namespace

TEST_CASE("killed 500 times while it edits and saves, the file is whole and no edit is lost",
          "[editor][journal][killed]") {
    static_cast<void>(tests::test_catalogue());  // read once, before all
    tests::Dice dice{500};
    int with_file = 0;
    int with_journal = 0;
    for (int time = 0; time < 500; ++time) {
        const auto edits = dice.below(2 * saves_after);
        const auto killed = killed_after(edits, static_cast<useconds_t>(dice.below(4'000)));
        CAPTURE(time, killed.told, killed.in_journals);
        REQUIRE(killed.in_file.has_value());
        // The one that was being made when the end came may be there or not.
        CHECK(std::max(*killed.in_file, killed.in_journals) >= killed.told);
        CHECK(std::max(*killed.in_file, killed.in_journals) <= killed.told + 1);
        with_file += *killed.in_file > 0 ? 1 : 0;
        with_journal += killed.in_journals > 0 ? 1 : 0;
    }
    CHECK(with_file > 50);
    CHECK(with_journal > 50);
}
