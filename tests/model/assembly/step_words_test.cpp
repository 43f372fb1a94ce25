// What paper, window and files call the steps and the joints of an assembly.
#include "model/assembly/step_words.h"

#include "engine/files/csv.h"
#include "model/assembly/assembly_csv.h"

#include "tests/model/book/book_job.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <array>
#include <map>
#include <set>
#include <string>
#include <utility>

namespace {

using model::Index;

struct Told {
    explicit Told(const std::string& name)
        : project{tests::sample(name)},
          resolved{model::resolve(project, tests::book_catalogue())},
          order{model::assembly_order(project, tests::book_catalogue(), resolved)},
          wording{project, tests::book_catalogue(), resolved, order} {}

    model::Project project;
    model::Resolved resolved;
    model::AssemblyOrder order;
    model::StepWording wording;

    engine::CsvTable csv() const {
        return engine::read_csv(
                   model::assembly_csv(project, tests::book_catalogue(), resolved, order))
            .value();
    }
};

std::size_t column(const engine::CsvTable& table, const std::string& name) {
    const auto& heads = table.header;
    return static_cast<std::size_t>(std::ranges::find(heads, name) - heads.begin());
}

}  // namespace

TEST_CASE("the datum end of a piece that is put on is told where its own holes say it lies",
          "[model][assembly][samples]") {
    std::array<std::size_t, 6> seen{};  // by side
    const std::array<std::string, 6> sides{"left", "right", "front", "back", "bottom", "top"};
    const std::string before = "datum end at the frame's ";
    for (const auto& name : tests::sample_names()) {
        const Told told(name);
        for (Index s = 0; s < told.order.steps.size(); ++s) {
            const auto lines = told.wording.lines(s);
            for (std::size_t m = 0; m < told.order.steps[s].moves.size(); ++m) {
                const auto& move = told.order.steps[s].moves[m];
                if (move.made_in < told.order.steps.size()) continue;
                const auto& piece = told.resolved.pieces[move.pieces.front()];
                CAPTURE(name, s, lines[m].text);
                const auto at = lines[m].text.find(before);
                if (is_of_sheet(piece.kind) || is_between_nodes(piece.kind)) {
                    CHECK(at == std::string::npos);
                    continue;
                }
                REQUIRE(at != std::string::npos);
                // By two of its holes: where they are measured from the datum end, and where their
                // fasteners stand in the frame.
                const auto axis = static_cast<std::size_t>(piece.run);
                std::map<model::Nm, model::Nm> stands;
                for (const auto& hole : told.resolved.holes) {
                    if (hole.piece != move.pieces.front() || hole.mate == model::no_index) continue;
                    stands[hole.from_datum] = told.resolved.fasteners[hole.fastener].at[axis];
                }
                if (stands.size() < 2) continue;
                const bool is_low = stands.begin()->second < stands.rbegin()->second;
                const std::size_t side = axis * 2 + (is_low ? 0 : 1);
                CHECK(lines[m].text.substr(at + before.size()) == sides[side]);
                ++seen[side];
            }
        }
    }
    CAPTURE(seen);
    CHECK(std::ranges::count(seen, std::size_t{0}) == 0);
}

TEST_CASE("in no step two joints are called alike, though the same marks meet in them",
          "[model][assembly][samples]") {
    std::size_t alike_marks = 0;
    for (const auto& name : tests::sample_names()) {
        CAPTURE(name);
        const Told told(name);
        for (Index s = 0; s < told.order.steps.size(); ++s) {
            std::set<std::string> members;
            std::set<std::string> marks;
            for (const auto& joint : told.wording.joints(s)) {
                CAPTURE(s, joint.number, joint.members);
                CHECK(joint.number > 0);
                CHECK(members.insert(joint.members).second);
                alike_marks += marks.insert(joint.marks).second ? 0U : 1U;
            }
        }
    }
    CHECK(alike_marks > 20);
}

TEST_CASE("joints are numbered within their frame in the order in which they are set",
          "[model][assembly][samples]") {
    for (const auto& name : tests::sample_names()) {
        CAPTURE(name);
        const Told told(name);
        const auto numbers = model::joint_numbers(told.order, told.resolved);
        std::vector<int> last(told.project.frames.size(), 0);
        for (const auto& step : told.order.steps) {
            for (const auto& setting : step.sets)
                CHECK(numbers[setting.joint] == ++last[step.frame]);
        }
    }
}

TEST_CASE("each joint of a step has its pins where it is pinned and its fasteners where it is set",
          "[model][assembly][samples]") {
    for (const auto& name : tests::sample_names()) {
        CAPTURE(name);
        const Told told(name);
        for (Index s = 0; s < told.order.steps.size(); ++s) {
            const auto& step = told.order.steps[s];
            for (const auto& joint : told.wording.joints(s)) {
                CAPTURE(s, joint.members);
                CHECK(joint.pins.empty() == std::ranges::none_of(step.pins, [&](const auto& pins) {
                          return pins.joint == joint.joint;
                      }));
                CHECK(joint.fasteners.empty() ==
                      std::ranges::none_of(step.sets, [&](const auto& setting) {
                          return setting.joint == joint.joint;
                      }));
                CHECK_FALSE((joint.pins.empty() && joint.fasteners.empty()));
            }
        }
    }
}

TEST_CASE("a joint that is pinned in one step and set in another says so in both",
          "[model][assembly]") {
    const Told told("work_counter.json");
    std::map<Index, std::pair<std::string, std::string>> notes;  // where it is pinned, where set
    std::map<Index, std::pair<Index, Index>> steps;
    for (Index s = 0; s < told.order.steps.size(); ++s) {
        for (const auto& joint : told.wording.joints(s)) {
            if (!joint.pins.empty())
                notes[joint.joint].first = joint.note, steps[joint.joint].first = s;
            if (!joint.fasteners.empty())
                notes[joint.joint].second = joint.note, steps[joint.joint].second = s;
        }
    }
    std::size_t later = 0;
    for (const auto& [joint, note] : notes) {
        const auto [pinned, set] = steps[joint];
        if (pinned == set) continue;
        ++later;
        CHECK(note.first == "set in step " + std::to_string(set + 1));
        CHECK_THAT(note.second, Catch::StartsWith("pinned in step " + std::to_string(pinned + 1)));
    }
    CHECK(later > 0);
}

TEST_CASE("the file counts steps within each frame, as window and paper do",
          "[model][assembly][samples]") {
    std::size_t most_frames = 0;
    for (const auto& name : tests::sample_names()) {
        CAPTURE(name);
        const Told told(name);
        const auto table = told.csv();
        std::map<std::string, std::set<std::string>> in_file;
        for (const auto& row : table.rows)
            in_file[row[column(table, "frame")]].insert(row[column(table, "step")]);
        std::map<std::string, std::set<std::string>> in_window;
        for (Index s = 0; s < told.order.steps.size(); ++s) {
            const auto& frame = told.project.frames[told.order.steps[s].frame].name;
            in_window[frame].insert(std::to_string(model::step_number(told.order, s)));
        }
        CHECK(in_file == in_window);
        most_frames = std::max(most_frames, in_window.size());
    }
    CHECK(most_frames > 1);
}

TEST_CASE("in the file a joint is told by its number, where it is pinned and where it is set",
          "[model][assembly][samples]") {
    for (const auto& name : tests::sample_names()) {
        CAPTURE(name);
        const Told told(name);
        const auto table = told.csv();
        std::map<std::pair<std::string, std::string>, std::string> set;  // frame, number: members
        std::set<std::pair<std::string, std::string>> named;             // frame, members
        for (const auto& row : table.rows) {
            const auto& act = row[column(table, "do")];
            if (act != "rivet" && act != "screw") continue;
            const auto& frame = row[column(table, "frame")];
            const auto& members = row[column(table, "joins")];
            CAPTURE(frame, members);
            CHECK(set.emplace(std::pair{frame, row[column(table, "joint")]}, members).second);
            CHECK(named.emplace(frame, members).second);
        }
        for (const auto& row : table.rows) {
            if (row[column(table, "do")] != "pin") continue;
            const std::pair key{row[column(table, "frame")], row[column(table, "joint")]};
            REQUIRE(set.count(key) == 1);
            CHECK(set[key] == row[column(table, "joins")]);
        }
    }
}

TEST_CASE("a step in which nothing is put on by hand is counted by what is done instead",
          "[model][assembly][samples]") {
    std::set<std::string> kinds;
    for (const auto& name : tests::sample_names()) {
        CAPTURE(name);
        const Told told(name);
        for (Index s = 0; s < told.order.steps.size(); ++s) {
            const auto count = told.wording.count(s);
            CAPTURE(s, count);
            CHECK_THAT(count, !Catch::StartsWith("0 "));
            kinds.insert(count.substr(count.find(' ') + 1));
        }
    }
    CHECK(kinds.count("part carried on") + kinds.count("parts carried on") > 0);
    CHECK(kinds.count("holes to fix through") == 1);
}

TEST_CASE("what is put on before its screws are set is called loose, until that step",
          "[model][assembly][samples]") {
    std::set<std::string> loose;
    for (const auto& name : tests::sample_names()) {
        const Told told(name);
        for (Index s = 0; s < told.order.steps.size(); ++s) {
            const auto& step = told.order.steps[s];
            if (step.moves.empty()) continue;
            std::set<Index> set_in;  // its own joints
            for (Index later = s; later < told.order.steps.size(); ++later)
                for (const auto& setting : told.order.steps[later].sets)
                    if (std::ranges::count(step.joins, setting.joint) > 0) set_in.insert(later);
            CAPTURE(name, told.wording.title(s));
            // Without the loose ones' own name this is what they would fail.
            CHECK((step.work != model::AssemblyWork::screwed_on || set_in.count(s) == 1));
            if (step.work != model::AssemblyWork::put_on_loose) continue;
            loose.insert(name);
            CHECK(told.wording.title(s).find(": put on loose, ") != std::string::npos);
            REQUIRE_FALSE(set_in.empty());
            REQUIRE(*set_in.begin() > s);
            const auto until = " loose until step " +
                               std::to_string(model::step_number(told.order, *set_in.begin())) +
                               " holds ";
            const auto lines = told.wording.lines(s);
            CHECK(std::ranges::count_if(lines, [&](const model::StepWords& line) {
                      return line.text.find(until) != std::string::npos;
                  }) == 1);
        }
    }
    CHECK(loose.count("water_tank_cradle.json") == 1);
}

TEST_CASE("numbers that follow each other are told as a range", "[model][assembly]") {
    CHECK(model::ranges_of({3}) == "3");
    CHECK(model::ranges_of({3, 4}) == "3, 4");
    CHECK(model::ranges_of({1, 2, 3, 7, 9, 10, 11}) == "1 to 3, 7, 9 to 11");
    CHECK(model::ranges_of({}).empty());
}
