// The three strokes as one journey, and how many actions of a person it takes: from an empty window
// to the drilling schedule of a cabinet over a wheel well.
#include "editor/band_worker.h"
#include "editor/dimension_values.h"
#include "editor/keys.h"
#include "engine/files/csv.h"
#include "engine/files/whole_file.h"
#include "model/resolve/piece_prisms.h"
#include "model/schedule/pieces_by_mark.h"

#include "tests/editor/headless_ui.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <map>
#include <set>
#include <thread>

using tests::HeadlessUi;
namespace key = editor::key;

namespace {

// One action is one click, one drag, one pressed shortcut (Enter is one), or one typed field;
// moving to that field by Tab is part of typing into it. The window is reached through this alone,
// so that nothing is done uncounted. Waiting and reading are no actions.
class Person {
public:
    Person() { ui_.desk.bands = std::make_unique<editor::BandWorker>(); }

    void clicks(const std::string& item) {
        done_.push_back("click " + item);
        ui_.click(item);
    }

    void presses(const std::string& words, int code, int modifier = 0, int modifier2 = 0) {
        done_.push_back("press " + words);
        ui_.press(code, modifier, modifier2);
    }

    // `tabs`: so many fields further than what has the keys now.
    void types(const std::string& field, const std::string& text, int tabs) {
        done_.push_back("type " + text + " into " + field);
        for (int i = 0; i < tabs; ++i) ui_.press(key::tab);
        ui_.type(text);
        INFO("field " << field);
        REQUIRE(ui_.item(field).value == text);
    }

    // For what is worked out beside the window.
    void waits_for(const std::string& item) {
        waits_until([&] { return ui_.has(item); });
    }
    void waits_until_written() {
        waits_until([&] { return !std::holds_alternative<editor::Writing>(ui_.desk.ui.dialog); });
    }

    std::string reads(const std::string& item) const { return ui_.item(item).value; }
    const editor::Derived& sees() { return ui_.now(); }
    const std::vector<std::string>& done() const { return done_; }

private:
    template <class Condition>
    void waits_until(const Condition& is_so) {
        for (int i = 0; i < 60'000 && !is_so(); ++i) {
            std::this_thread::sleep_for(std::chrono::milliseconds(1));
            ui_.frame();
        }
        ui_.settle();
    }

    HeadlessUi ui_;
    std::vector<std::string> done_;
};

// ---- the journey --------------------------------------------------------------------------------

// At the left wall, 6 in behind the bulkhead. What only checks the tape is passed over.
void tapes_a_well(Person& person) {
    person.presses("Ctrl+W", 'W', key::left_control);
    person.types("Well/start", "6", 4);
    person.types("Well/length", "34", 1);
    person.types("Well/height", "9 1/4", 3);
    person.types("Well/reach", "8 1/2", 1);
    person.presses("Enter", key::enter);
}

// As the form begins it, but for the shelf, which is to lie above the well.
void starts_a_box(Person& person) {
    person.presses("Ctrl+B", 'B', key::left_control);
    person.types("Starter/shelf 1", "14", 3);
    person.presses("Enter", key::enter);
}

// Its back to the left wall, its front to the walkway in the middle of the van.
void turns_its_front_to_a_walkway(Person& person) {
    person.presses("Ctrl+Shift+G", 'G', key::left_control, key::left_shift);
    person.clicks("Place/a quarter");
    person.types("Place/place x", "depth", 1);
    person.presses("Enter", key::enter);
    person.clicks("Top/Room");
    person.clicks("Top/Room/room.kept_clear");
    person.presses("Enter", key::enter);
}

void steps_it_over_the_well(Person& person) {
    person.presses("Ctrl+G", 'G', key::left_control);
    person.presses("Enter", key::enter);
}

void makes_it_as_deep_as_fits(Person& person) {
    person.presses("Ctrl+2", '2', key::left_control);
    person.waits_for("Lay out/Largest depth");
    CHECK_THAT(person.reads("Lay out/band depth"), Catch::Contains("then walkway"));
    person.clicks("Lay out/Largest depth");
}

void exports_into(Person& person, const std::filesystem::path& folder) {
    person.presses("Ctrl+E", 'E', key::left_control);
    person.types("Files/Folder", folder.string(), 1);
    person.presses("Enter", key::enter);
    person.clicks("Files/Take");
    person.waits_until_written();
}

// ---- what came of it ----------------------------------------------------------------------------

using MarkAndHand = std::pair<std::string, std::string>;

// How many lines the file has for each.
std::map<MarkAndHand, std::size_t> drilled_lines(const std::filesystem::path& drill_csv) {
    const auto text = engine::read_whole_file(drill_csv);
    REQUIRE(text);
    const auto table = engine::read_csv(*text);
    REQUIRE(table);
    REQUIRE(table->header.size() > 2);
    REQUIRE(table->header[0] == "mark");
    REQUIRE(table->header[1] == "hand");
    std::map<MarkAndHand, std::size_t> lines;
    for (const auto& row : table->rows) ++lines[{row[0], row[1]}];
    return lines;
}

// How many holes a piece of each has; what has none is left out.
std::map<MarkAndHand, std::size_t> holes_in(const model::Resolved& resolved) {
    std::map<MarkAndHand, std::size_t> holes;
    for (const auto& group : model::pieces_by_mark(resolved)) {
        const auto count = resolved.pieces[group.pieces.front()].hole_count;
        const MarkAndHand name{resolved.marks[group.mark].name,
                               std::string(model::name_of(group.hand))};
        if (count > 0) holes[name] = count;
    }
    return holes;
}

std::set<std::string> members_of(const model::Project& project) {
    std::set<std::string> names;
    for (const auto& member : project.frames.at(0).members) names.insert(member.name);
    return names;
}

// Of the pieces of members that were not there before.
std::set<std::string> marks_of_new_members(const editor::Derived& now,
                                           const std::set<std::string>& before) {
    std::set<std::string> marks;
    for (const auto& piece : now.resolved.pieces) {
        if (piece.member == model::no_index) continue;
        const auto& name = now.project->frames[piece.frame].members[piece.member].name;
        if (!before.contains(name)) marks.insert(now.resolved.marks[piece.mark].name);
    }
    return marks;
}

bool tells_of(const editor::Derived& now, std::string_view code) {
    return std::ranges::any_of(now.findings, [&](const auto& it) { return it.code == code; });
}

// mm, from the box that was taped.
double away_from_well(const model::Box& box) {
    constexpr std::array<double, 3> least{0.0, 6.0, 0.0};
    constexpr std::array<double, 3> most{8.5, 40.0, 9.25};
    double sum = 0.0;
    for (std::size_t k = 0; k < 3; ++k) {
        const double below = least[k] * 25.4 - static_cast<double>(box.hi[k]) * 1e-6;
        const double above = static_cast<double>(box.lo[k]) * 1e-6 - most[k] * 25.4;
        const double gap = std::max({below, above, 0.0});
        sum += gap * gap;
    }
    return std::sqrt(sum);
}

// mm, of the nearest wall of all its pieces.
double nearest_to_well(const model::Resolved& resolved) {
    double nearest = HUGE_VAL;
    for (const auto& piece : resolved.pieces) {
        for (std::size_t i = 0; i < piece.plate_count; ++i) {
            const auto& wall = piece.plates.at(i).box;
            const auto& frame = resolved.frames[piece.frame];
            nearest = std::min(nearest, away_from_well(model::box_in_room(frame, wall)));
        }
    }
    return nearest;
}

}  // namespace

TEST_CASE("a cabinet over a wheel well comes from nothing to its drilling schedule in 25 actions",
          "[editor][strokes]") {
    const tests::TemporaryFolder folder;
    Person person;
    tapes_a_well(person);
    starts_a_box(person);
    turns_its_front_to_a_walkway(person);
    REQUIRE(tells_of(person.sees(), "inside_obstacle"));
    const auto before = members_of(*person.sees().project);

    steps_it_over_the_well(person);
    makes_it_as_deep_as_fits(person);
    exports_into(person, folder.path());

    const auto& now = person.sees();
    CHECK(now.summary.errors == 0);
    CHECK_FALSE(tells_of(now, "inside_obstacle"));
    CHECK_FALSE(tells_of(now, "clearance"));
    CHECK_FALSE(tells_of(now, "in_the_way"));
    CHECK(now.resolved.shop.clearance > 0);
    CHECK(nearest_to_well(now.resolved) >= static_cast<double>(now.resolved.shop.clearance) * 1e-6);
    const auto depth = editor::value_of(now, "depth");
    REQUIRE(depth);
    CHECK(depth->length.inches() > 23.5);  // it was 16; the walkway begins at 24

    const auto lines = drilled_lines(folder.path() / "drill.csv");
    CHECK(lines == holes_in(now.resolved));
    const auto stepped = marks_of_new_members(now, before);
    CHECK(stepped.size() >= 4);
    for (const auto& mark : stepped) {
        CAPTURE(mark);
        CHECK(std::ranges::any_of(lines, [&](const auto& it) { return it.first.first == mark; }));
    }
    CAPTURE(person.done());
    CHECK(person.done().size() <= 25);
}
