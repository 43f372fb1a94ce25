#include "editor/journal_keeper.h"

#include "editor/commands.h"
#include "editor/desk_files.h"
#include "editor/left_behind.h"
#include "editor/open_project.h"

#include "tests/editor/headless_ui.h"

#include <catch2/catch.hpp>
#include <sys/resource.h>
#include <unistd.h>

#include <fstream>

using Catch::Contains;
using tests::HeadlessUi;
using tests::TemporaryFolder;
namespace fs = std::filesystem;

namespace {

// A desk that keeps its journal in the folder, as the program's window does.
struct Kept {
    explicit Kept(const fs::path& folder) {
        ui.desk.state_folder = folder / "state";
        ui.desk.journal =
            std::make_shared<editor::JournalKeeper>(editor::journal_folder(ui.desk.state_folder));
    }

    void edit(const std::string& note) {
        REQUIRE(editor::submit(ui.desk, editor::change_of(model::SetTitle{"counter", note})));
        keep();
    }
    void keep(bool is_at_rest = true) { ui.desk.journal->keep(ui.desk, is_at_rest); }
    std::string note() { return editor::project_of(ui.desk).note; }

    HeadlessUi ui;
};

// As the program leaves it when it is killed: the journal is not taken away.
fs::path left_by_a_crash(const fs::path& folder, const fs::path& saved_as = {}) {
    const fs::path copy = editor::journal_folder(folder / "state") / "edits-1-1.journal";
    Kept kept(folder);
    if (!saved_as.empty()) {
        kept.edit("saved");
        REQUIRE(editor::save_to(kept.ui.desk, saved_as));
        kept.keep();
    }
    kept.edit("one");
    kept.edit("two");
    fs::copy_file(kept.ui.desk.journal->path(), copy);
    return copy;
}

std::vector<editor::LeftBehind> left_in(const fs::path& folder) {
    return editor::left_behind(editor::journal_folder(folder / "state"));
}

}  // namespace

TEST_CASE("a project that is saved has no journal, one that is edited has", "[editor][journal]") {
    const TemporaryFolder folder;
    Kept kept(folder.path());
    kept.keep();
    CHECK(kept.ui.desk.journal->path().empty());
    kept.edit("one");
    const auto journal = kept.ui.desk.journal->path();
    REQUIRE(fs::exists(journal));
    REQUIRE(editor::save_to(kept.ui.desk, folder.path() / "counter.json"));
    kept.keep();
    CHECK_FALSE(fs::exists(journal));
    kept.edit("two");
    CHECK(fs::exists(kept.ui.desk.journal->path()));
    editor::run_command(kept.ui.desk, "edit.undo");
    kept.keep();
    CHECK(kept.ui.desk.journal->path().empty());
}

TEST_CASE("the journal goes with the program that ends as it should", "[editor][journal]") {
    const TemporaryFolder folder;
    fs::path journal;
    {
        Kept kept(folder.path());
        kept.edit("one");
        journal = kept.ui.desk.journal->path();
        CHECK(left_in(folder.path()).empty());  // it is being written
    }
    CHECK_FALSE(fs::exists(journal));
}

TEST_CASE("edits that a crash left are offered, and brought back as one step",
          "[editor][journal]") {
    const TemporaryFolder folder;
    const auto file = folder.path() / "counter.json";
    const auto journal = left_by_a_crash(folder.path(), file);
    Kept kept(folder.path());
    editor::ask_about_left_behind(kept.ui.desk);
    kept.ui.settle();
    const auto words = kept.ui.item("Recovery/words").value;
    CHECK_THAT(words, Contains("2 edits to counter") && Contains(file.string()));
    kept.ui.click("Recovery/Bring back");
    kept.ui.settle();
    CHECK(kept.note() == "two");
    CHECK(kept.ui.desk.file == file);
    CHECK_FALSE(kept.ui.desk.history.is_saved());
    CHECK_FALSE(fs::exists(journal));
    CHECK(fs::exists(kept.ui.desk.journal->path()));  // it is safe again at once
    editor::run_command(kept.ui.desk, "edit.undo");
    CHECK(kept.note() == "saved");
    CHECK(kept.ui.desk.history.is_saved());
}

TEST_CASE("edits that a crash left may be thrown away, or asked about again", "[editor][journal]") {
    const TemporaryFolder folder;
    const auto journal = left_by_a_crash(folder.path());
    Kept kept(folder.path());
    editor::ask_about_left_behind(kept.ui.desk);
    kept.ui.settle();
    CHECK_THAT(kept.ui.item("Recovery/words").value, Contains("never saved"));
    kept.ui.click("Recovery/Later");
    CHECK(fs::exists(journal));
    CHECK_FALSE(editor::is_open(kept.ui.desk.ui.dialog));
    editor::ask_about_left_behind(kept.ui.desk);
    kept.ui.settle();
    kept.ui.click("Recovery/Discard");
    CHECK_FALSE(fs::exists(journal));
    CHECK(kept.note().empty());
}

TEST_CASE("each journal has a question of its own, the newest first", "[editor][journal]") {
    const TemporaryFolder folder;
    const auto first = left_by_a_crash(folder.path());
    const auto second = first.parent_path() / "edits-1-2.journal";
    fs::copy_file(first, second);
    fs::last_write_time(first, fs::last_write_time(second) - std::chrono::hours(2));
    Kept kept(folder.path());
    editor::ask_about_left_behind(kept.ui.desk);
    kept.ui.settle();
    kept.ui.click("Recovery/Discard");
    CHECK_FALSE(fs::exists(second));
    REQUIRE(fs::exists(first));
    kept.ui.settle();
    kept.ui.click("Recovery/Discard");
    CHECK_FALSE(fs::exists(first));
    CHECK_FALSE(editor::is_open(kept.ui.desk.ui.dialog));
}

TEST_CASE("a journal whose last edits are in the file is taken away without a question",
          "[editor][journal]") {
    const TemporaryFolder folder;
    const auto file = folder.path() / "counter.json";
    const auto journal = left_by_a_crash(folder.path(), file);
    auto project = editor::open_project(file).value();
    project.note = "two";
    {
        Kept other(folder.path());
        editor::replace_project(other.ui.desk, project, file);
        REQUIRE(editor::save_to(other.ui.desk, file));
    }
    CHECK(left_in(folder.path()).empty());
    CHECK_FALSE(fs::exists(journal));
}

TEST_CASE("what is no journal is passed over and left alone", "[editor][journal]") {
    const TemporaryFolder folder;
    const auto journals = editor::journal_folder(folder.path() / "state");
    fs::create_directories(journals);
    std::ofstream(journals / "photo.journal") << "\x89PNG and so on";
    std::ofstream(journals / "note.txt") << "mine";
    CHECK(left_in(folder.path()).empty());
    CHECK(fs::exists(journals / "photo.journal"));
    CHECK(editor::left_behind(folder.path() / "nowhere").empty());
}

TEST_CASE("a drag is written when it ends or rests", "[editor][journal]") {
    const TemporaryFolder folder;
    Kept kept(folder.path());
    auto change = editor::change_of(model::SetTitle{"counter", "dragged"});
    change.merge_key = "drag 1";
    REQUIRE(editor::submit(kept.ui.desk, change));
    kept.keep(false);
    CHECK(kept.ui.desk.journal->path().empty());
    kept.keep(true);
    CHECK_FALSE(kept.ui.desk.journal->path().empty());
}

TEST_CASE("where no journal can be written the program says so and goes on", "[editor][journal]") {
    const TemporaryFolder folder;
    std::ofstream(folder.path() / "state") << "a file where the folder should be";
    Kept kept(folder.path());
    kept.edit("one");
    REQUIRE(kept.ui.desk.ui.notice);
    CHECK(kept.ui.desk.ui.notice->is_trouble);
    CHECK_THAT(kept.ui.desk.ui.notice->text, Contains("Save often"));
    kept.ui.desk.ui.notice.reset();
    kept.edit("two");
    CHECK_FALSE(kept.ui.desk.ui.notice);  // it is said once
    CHECK(kept.note() == "two");
}

TEST_CASE("a full disk stops the journal, not the editing, and nothing that is written is lost",
          "[editor][journal]") {
    const TemporaryFolder folder;
    Kept kept(folder.path());
    kept.edit("one");
    rlimit old{};
    REQUIRE(::getrlimit(RLIMIT_FSIZE, &old) == 0);
    rlimit small = old;
    small.rlim_cur = fs::file_size(kept.ui.desk.journal->path()) + 10;
    REQUIRE(::setrlimit(RLIMIT_FSIZE, &small) == 0);
    kept.edit("two");
    REQUIRE(::setrlimit(RLIMIT_FSIZE, &old) == 0);
    CHECK_THAT(kept.ui.desk.ui.notice->text, Contains("cannot be kept"));
    const auto read = engine::read_records(kept.ui.desk.journal->path());
    REQUIRE(read);
    CHECK(model::replayed(read->records)->now.note == "one");
    CHECK(kept.note() == "two");
}

TEST_CASE("edits that cannot be made safe again stay in the journal that a crash left",
          "[editor][journal]") {
    const TemporaryFolder folder;
    const auto journal = left_by_a_crash(folder.path());
    const auto first = engine::read_records(journal)->records.front().size();
    // The disk is full at once, or has room for the beginning of a new journal alone.
    const auto room = GENERATE_COPY(std::size_t{100}, first + 30);
    Kept kept(folder.path());
    rlimit old{};
    REQUIRE(::getrlimit(RLIMIT_FSIZE, &old) == 0);
    rlimit small = old;
    small.rlim_cur = room;
    REQUIRE(::setrlimit(RLIMIT_FSIZE, &small) == 0);
    editor::bring_back(kept.ui.desk, journal);
    REQUIRE(::setrlimit(RLIMIT_FSIZE, &old) == 0);
    CHECK(kept.note() == "two");
    CHECK_THAT(kept.ui.desk.ui.notice->text, Contains("cannot be kept"));
    CHECK(fs::exists(journal));
    kept.edit("three");  // there is room again
    CHECK(kept.ui.desk.journal->holds(kept.ui.desk));
}

TEST_CASE("bringing edits back asks before it puts others away", "[editor][journal]") {
    const TemporaryFolder folder;
    const auto journal = left_by_a_crash(folder.path());
    Kept kept(folder.path());
    kept.edit("mine");
    editor::ask_about_left_behind(kept.ui.desk);
    kept.ui.settle();
    kept.ui.click("Recovery/Bring back");
    kept.ui.settle();
    REQUIRE(std::holds_alternative<editor::UnsavedQuestion>(kept.ui.desk.ui.dialog));
    kept.ui.click("Unsaved/Stay");
    CHECK(kept.note() == "mine");
    CHECK(fs::exists(journal));
}

TEST_CASE("a journal that is not whole is kept when its edits are brought back",
          "[editor][journal]") {
    const TemporaryFolder folder;
    const auto journal = left_by_a_crash(folder.path());
    std::ofstream(journal, std::ios::app) << "0000";
    Kept kept(folder.path());
    editor::ask_about_left_behind(kept.ui.desk);
    kept.ui.settle();
    CHECK_THAT(kept.ui.item("Recovery/words").value, Contains("cannot be read"));
    kept.ui.click("Recovery/Bring back");
    CHECK(kept.note() == "two");
    CHECK_FALSE(fs::exists(journal));
    CHECK(fs::exists(fs::path(journal).replace_extension(".kept")));
}

TEST_CASE("a project is in its journal or in its file, whenever it is saved", "[editor][journal]") {
    const TemporaryFolder folder;
    Kept kept(folder.path());
    REQUIRE(editor::submit(kept.ui.desk, editor::change_of(model::SetTitle{"counter", "one"})));
    REQUIRE(editor::save_to(kept.ui.desk, folder.path() / "counter.json"));
    CHECK(kept.ui.desk.journal->path().empty());
    kept.edit("two");
    kept.ui.desk.history.mark_saved_as(model::Project{.name = "written by something else"});
    kept.keep();
    CHECK(kept.ui.desk.journal->holds(kept.ui.desk));
    std::size_t count = 0;
    for (const auto& entry : fs::directory_iterator(kept.ui.desk.journal->path().parent_path()))
        count += entry.is_regular_file() ? 1U : 0U;
    CHECK(count == 1);
}

TEST_CASE("a journal that cannot be read is told once, and kept", "[editor][journal]") {
    const TemporaryFolder folder;
    const auto journals = editor::journal_folder(folder.path() / "state");
    fs::create_directories(journals);
    const auto path = journals / "edits-1-1.journal";
    {
        auto log = engine::RecordLog::create(path).value();
        REQUIRE(log.append("{\"barwright journal\": 1}"));
    }
    Kept kept(folder.path());
    editor::ask_about_left_behind(kept.ui.desk);
    REQUIRE(std::holds_alternative<editor::Trouble>(kept.ui.desk.ui.dialog));
    CHECK_THAT(std::get<editor::Trouble>(kept.ui.desk.ui.dialog).text, Contains(journals.string()));
    CHECK_FALSE(fs::exists(path));
    CHECK(fs::exists(fs::path(path).replace_extension(".kept")));
    CHECK(left_in(folder.path()).empty());
}

TEST_CASE("a journal of a later program is told each time and stays for it", "[editor][journal]") {
    const TemporaryFolder folder;
    const auto journal = left_by_a_crash(folder.path());
    auto records = engine::read_records(journal)->records;
    fs::remove(journal);
    {
        auto log = engine::RecordLog::create(journal).value();
        records.front().replace(records.front().find(':') + 1, 1, "9");
        for (const auto& record : records) REQUIRE(log.append(record));
    }
    for (int start = 0; start < 2; ++start) {
        const auto left = left_in(folder.path());
        REQUIRE(left.size() == 1);
        CHECK(left.front().fault == engine::ErrorCode::newer_version);
        Kept kept(folder.path());
        editor::ask_about_left_behind(kept.ui.desk);
        CHECK(std::holds_alternative<editor::Trouble>(kept.ui.desk.ui.dialog));
        CHECK(fs::exists(journal));
    }
}

TEST_CASE("journals that hold nothing are taken away", "[editor][journal]") {
    const TemporaryFolder folder;
    const auto journal = left_by_a_crash(folder.path());
    const auto records = engine::read_records(journal)->records;
    const auto journals = journal.parent_path();
    fs::remove(journal);
    std::ofstream(journals / "edits-2-1.journal").flush();
    {
        auto log = engine::RecordLog::create(journal).value();
        REQUIRE(log.append(records.front()));
    }
    CHECK(left_in(folder.path()).empty());
    CHECK(fs::is_empty(journals));
}

TEST_CASE("a journal that is damaged in its first step is put aside, and none before it is lost",
          "[editor][journal]") {
    const TemporaryFolder folder;
    const auto journal = left_by_a_crash(folder.path());
    const auto kept = fs::path(journal).replace_extension(".kept");
    std::ofstream(kept) << "of an earlier run";
    const auto first = engine::read_records(journal)->records.front().size();
    {
        std::fstream file(journal, std::ios::in | std::ios::out | std::ios::binary);
        file.seekp(static_cast<std::streamoff>(first + 60));
        file << "########";
    }
    CHECK(left_in(folder.path()).empty());
    CHECK_FALSE(fs::exists(journal));
    CHECK(fs::file_size(kept) == std::string("of an earlier run").size());
    CHECK(fs::exists(fs::path(kept).replace_extension(".2.kept")));
}

TEST_CASE("what an earlier program of the same number left half made does not stop a journal",
          "[editor][journal]") {
    const TemporaryFolder folder;
    const auto journals = editor::journal_folder(folder.path() / "state");
    fs::create_directories(journals);
    const auto name = "edits-" + std::to_string(::getpid()) + "-1.journal.new";
    std::ofstream(journals / name) << "half";
    Kept kept(folder.path());
    kept.edit("one");
    CHECK(kept.ui.desk.journal->holds(kept.ui.desk));
    CHECK(fs::exists(journals / name));
}
