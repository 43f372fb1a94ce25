// The pictures of the steps of an assembly.
#include "model/book/step_picture.h"

#include "model/schedule/pieces_by_mark.h"

#include "tests/model/book/book_job.h"
#include "tests/model/book/texts_on_page.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <map>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace {

using model::Index;

bool has_dashes(const engine::Page& page) {
    return std::ranges::any_of(page.items(), [](const engine::PageItem& item) {
        const auto* drawn = std::get_if<engine::DrawnLines>(&item);
        return drawn != nullptr && drawn->pen.width == engine::wide_width;
    });
}

// Counts the labels that lack, and the pictures with something hidden.
struct Looked {
    std::size_t lacking = 0;
    std::size_t dashed = 0;
};

Looked look_at_steps(const tests::BookJob& job) {
    const auto order = model::assembly_order(job.project, tests::book_catalogue(), job.resolved);
    std::map<std::pair<Index, Index>, std::vector<Index>> standing;  // by frame, assembly
    Looked looked;
    for (const auto& step : order.steps) {
        auto& stands = standing[{step.frame, step.assembly}];
        std::vector<bool> is_new(job.resolved.pieces.size(), false);
        std::map<std::string, std::ptrdiff_t> marks;
        for (const auto& move : step.moves) {
            for (const Index piece : move.pieces) {
                stands.push_back(piece);
                is_new[piece] = true;
                ++marks[model::mark_on_drawing(job.resolved, job.resolved.pieces[piece])];
            }
        }
        engine::Page page{engine::Paper::a4};
        model::draw_step_picture(page, {12, 12, 112, 94}, job.resolved, stands, is_new, {});
        const auto texts = tests::texts_on(page);
        for (const auto& [mark, count] : marks)
            if (std::ranges::count(texts, mark, &tests::TextOnPage::text) < count) ++looked.lacking;
        looked.dashed += has_dashes(page) ? 1U : 0U;
    }
    return looked;
}

}  // namespace

TEST_CASE("what a step puts on has its mark in the picture, also where others hide it",
          "[model][book][steps][samples]") {
    const auto looked = look_at_steps(tests::book_job(tests::sample("ways_of_meeting.json")));
    CHECK(looked.lacking == 0);
    CHECK(looked.dashed > 0);
}

TEST_CASE("the numbers of joints stand beside what they would cover", "[model][book][steps]") {
    const engine::PageBox box{0.0, 0.0, 100.0, 100.0};
    const engine::PageBox piece{46.0, 48.0, 8.0, 4.0};
    const std::vector<engine::PagePoint> joints{{47.0, 50.0}, {53.0, 50.0}, {50.0, 49.0}};
    const std::vector<double> radii(joints.size(), 2.1);
    const auto on_joints = model::places_of_numbers(joints, radii, box, {});
    CHECK(on_joints[0].x == 47.0);
    for (const auto& at : model::places_of_numbers(joints, radii, box, {piece})) {
        const bool is_beside =
            at.x < 46.0 - 2.1 || at.x > 54.0 + 2.1 || at.y < 48.0 - 2.1 || at.y > 52.0 + 2.1;
        CAPTURE(at.x, at.y);
        CHECK(is_beside);
    }
    // Where there is room nowhere else they stand on it.
    const auto crowded = model::places_of_numbers(joints, radii, box, {box});
    CHECK(crowded[0].x == 47.0);
}
