#include "model/project/journal.h"

#include "model/project/edit.h"

#include "tests/model/project/full_project.h"

#include <catch2/catch.hpp>

#include <vector>

using namespace model;
using Catch::Matchers::Contains;

namespace {

struct Written {
    std::vector<std::string> records;
    std::vector<Project> states;
};

// Three edits of the full project.
Written three_edits() {
    Written written{{}, {model_tests::full_project()}};
    JournalWriter writer(written.states[0], "/van/counter.json");
    written.records.push_back(writer.first_record());
    const std::vector<Edit> edits{SetTitle{"other", "\"quoted\" ½"}, RemovePanel{"counter", "door"},
                                  SetTitle{"third", ""}};
    for (const auto& edit : edits) {
        auto next = apply(written.states.back(), edit);
        if (!next) next = written.states.back();
        Project project = *next;
        project.note += "!";
        const auto record = writer.next_record(project, label_of(edit));
        REQUIRE(record.has_value());
        written.records.push_back(*record);
        written.states.push_back(project);
    }
    return written;
}

ReplayedJournal replay(const std::vector<std::string>& records) {
    const auto journal = replayed(records);
    if (!journal) FAIL(to_text(journal.error()));
    return *journal;
}

}  // namespace

TEST_CASE("a journal gives the project after its last record", "[model][journal]") {
    const auto written = three_edits();
    for (std::size_t count = 1; count <= written.records.size(); ++count) {
        const auto journal = replay({written.records.begin(),
                                     written.records.begin() + static_cast<std::ptrdiff_t>(count)});
        CHECK(journal.file == "/van/counter.json");
        CHECK(journal.saved == written.states[0]);
        CHECK(journal.now == written.states[count - 1]);
        CHECK(journal.steps == count - 1);
        CHECK(journal.left_out == 0);
    }
    CHECK(replay(written.records).last_label == label_of(Edit{SetTitle{"third", ""}}));
}

TEST_CASE("what changes nothing gives no record", "[model][journal]") {
    const auto project = model_tests::full_project();
    JournalWriter writer(project, "");
    CHECK_FALSE(writer.next_record(project, "nothing").has_value());
    auto other = project;
    other.name = "other";
    CHECK(writer.next_record(other, "name").has_value());
    CHECK_FALSE(writer.next_record(other, "nothing").has_value());
}

TEST_CASE("a small edit gives a short record, a new project one that is whole",
          "[model][journal]") {
    const auto project = model_tests::full_project();
    JournalWriter writer(project, "");
    auto other = project;
    other.note = "beside the door";
    CHECK(writer.next_record(other, "note")->size() < 200);
    CHECK_THAT(*writer.next_record(Project{.name = "empty"}, "new"), Contains("\"project\""));
}

TEST_CASE("records behind one that cannot be made again are left out", "[model][journal]") {
    const auto good = three_edits();
    const std::vector<std::string> bad{
        "",
        "not JSON",
        "[]",
        "{}",
        R"({"label": 3, "patch": []})",
        R"({"label": "x"})",
        R"({"label": "x", "patch": {}})",
        R"({"label": "x", "patch": [{"op": "remove"}]})",
        R"({"label": "x", "patch": [{"op": "remove", "path": "/nowhere/at/all"}]})",
        R"({"label": "x", "patch": [{"op": "add", "path": "/name/x", "value": 1}]})",
        R"({"label": "x", "patch": [{"op": "add", "path": "name", "value": 1}]})",
        R"({"label": "x", "patch": [{"op": "copy", "from": "/frames", "path": "/note/1"}]})",
        R"({"label": "x", "project": []})"};
    for (const auto& record : bad) {
        CAPTURE(record);
        auto records = good.records;
        records[2] = record;
        const auto journal = replay(records);
        CHECK(journal.now == good.states[1]);
        CHECK(journal.steps == 1);
        CHECK(journal.left_out == 2);
    }
}

TEST_CASE("a last record that comes to no project is left out", "[model][journal]") {
    auto written = three_edits();
    written.records.push_back(
        R"({"label": "x", "patch": [{"op": "replace", "path": "/name", "value": 7}]})");
    const auto journal = replay(written.records);
    CHECK(journal.now == written.states[3]);
    CHECK(journal.steps == 3);
    CHECK(journal.left_out == 1);
}

TEST_CASE("what does not begin as a journal is refused", "[model][journal]") {
    const auto code_of = [](const std::string& first) {
        const auto journal = replayed(std::vector{first});
        REQUIRE_FALSE(journal.has_value());
        return journal.error().code;
    };
    CHECK(replayed({}).error().code == engine::ErrorCode::bad_file);
    for (const char* first :
         {"", "[]", "{}", R"({"barwright_journal": "1"})", R"({"barwright_journal": 1})",
          R"({"barwright_journal": 1, "file": 3, "project": {}})",
          R"({"barwright_journal": 1, "file": "", "project": {"barwright": 1, "planes": 3}})"}) {
        CAPTURE(first);
        CHECK(code_of(first) == engine::ErrorCode::bad_file);
    }
    CHECK(code_of(R"({"barwright_journal": 2})") == engine::ErrorCode::newer_version);
}
