#include "editor/places/bench_lines.h"

#include "editor/desk_files.h"

#include "tests/editor/headless_ui.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <set>
#include <string>

using model::BenchWork;
using tests::HeadlessUi;

namespace {

const editor::Derived& opened(HeadlessUi& ui, const std::string& sample) {
    REQUIRE(editor::open_file(ui.desk, std::string(BARWRIGHT_SAMPLES "/") + sample + ".json"));
    ui.settle();
    return editor::derived(ui.desk);
}

std::vector<model::BenchPiece> pieces_of(const HeadlessUi& ui, const editor::Derived& derived) {
    return model::bench_pieces(*derived.project, *ui.desk.catalogue, derived.resolved, {});
}

// "12 x blind rivet 1/8" is 12.
int first_number(const std::string& line) { return std::stoi(line); }

}  // namespace

TEST_CASE("what is set on a piece are all fasteners that go through it", "[editor][bench]") {
    const std::string sample = GENERATE("ways_of_meeting", "leaning_locker", "work_counter");
    HeadlessUi ui;
    const auto& derived = opened(ui, sample);
    for (const auto& piece : pieces_of(ui, derived)) {
        if (piece.state(BenchWork::set) == model::WorkState::not_needed) continue;
        CAPTURE(sample, piece.words);
        auto lines = editor::bench_lines(derived, *ui.desk.catalogue, piece, BenchWork::set);
        REQUIRE(lines.size() > 1);
        lines.pop_back();
        int told = 0;
        for (const auto& line : lines) told += first_number(line);
        int through = 0;
        for (const auto& fastener : derived.resolved.fasteners) {
            for (int i = 0; i < fastener.stack_count; ++i)
                through += fastener.stack[static_cast<std::size_t>(i)].piece == piece.piece;
        }
        CHECK(told == through);
    }
}

TEST_CASE("at the bench each setting has one line, and each hole a place in it",
          "[editor][bench]") {
    const std::string sample = GENERATE("ways_of_meeting", "leaning_locker", "work_counter");
    HeadlessUi ui;
    const auto& derived = opened(ui, sample);
    bool has_matched = false;
    for (const auto& piece : pieces_of(ui, derived)) {
        CAPTURE(sample, piece.words);
        std::set<std::string> settings;
        std::ptrdiff_t distances = 0;
        const auto lines =
            editor::bench_lines(derived, *ui.desk.catalogue, piece, BenchWork::drill);
        for (const auto& line : lines) {
            const auto end = line.find(": ");
            REQUIRE(end != std::string::npos);
            CHECK(settings.insert(line.substr(0, end)).second);
            distances +=
                1 + std::count(line.begin() + static_cast<std::ptrdiff_t>(end), line.end(), ',');
            const bool is_matched = line.find("match-drill") != std::string::npos;
            has_matched = has_matched || is_matched;
            CHECK(is_matched == (line.find("fence") == std::string::npos));
        }
        const auto& it = derived.resolved.pieces[piece.piece];
        CHECK(distances == std::ranges::count_if(derived.drills, [&](const model::DrillRow& row) {
                  return row.mark == it.mark && row.hand == it.hand;
              }));
    }
    CHECK(has_matched == (sample != "work_counter"));
}
