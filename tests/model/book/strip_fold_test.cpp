// The line along which a paper is folded, and the words that lie across it.
#include "model/book/drill_strips.h"
#include "model/resolve/resolve.h"

#include "tests/model/book/printed_sample.h"
#include "tests/model/book/strip_on_sheet.h"
#include "tests/model/book/texts_on_page.h"
#include "tests/model/catalogue/shipped_catalogue.h"

#include <catch2/catch.hpp>

#include <array>
#include <variant>
#include <vector>

namespace {

using Part = std::array<engine::PagePoint, 2>;

// Each fold with its parts.
std::vector<std::vector<Part>> folds_on(const engine::Page& page) {
    std::vector<std::vector<Part>> folds;
    for (const auto& item : page.items()) {
        const auto* drawn = std::get_if<engine::DrawnLines>(&item);
        if (drawn != nullptr && drawn->pen.dash == engine::Dash::chain)
            folds.push_back(drawn->lines);
    }
    return folds;
}

bool crosses(const Part& part, const engine::PageBox& box) {
    const double x = part[0].x;
    return box.left < x && x < box.left + box.width && part[0].y < box.top + box.height &&
           part[1].y > box.top;
}

struct FoldCount {
    std::size_t folds = 0;
    std::size_t broken = 0;
};

// No word is crossed, and a fold that meets none is whole.
FoldCount check_folds(const tests::PrintedSample& sample, engine::Paper paper) {
    FoldCount count;
    const auto strips =
        model::drill_strips(sample.project, shipped_catalogue(), sample.resolved, {.paper = paper});
    for (const auto& page : strips.document.pages) {
        const auto texts = tests::texts_on(page);
        for (const auto& parts : folds_on(page)) {
            ++count.folds;
            if (parts.size() > 1) ++count.broken;
            const Part whole{parts.front()[0], parts.back()[1]};
            bool meets_words = false;
            for (const auto& text : texts) {
                CAPTURE(text.text);
                if (crosses(whole, text.box)) meets_words = true;
                for (const auto& part : parts) CHECK_FALSE(crosses(part, text.box));
            }
            CHECK(meets_words == (parts.size() > 1));
        }
    }
    return count;
}

}  // namespace

TEST_CASE("the line of a fold is broken where words lie across it, and nowhere else",
          "[model][book][strips]") {
    FoldCount all;
    for (const auto* section : {"angle 1 x 1 x 1/8", "angle 1/2 x 1/2 x 1/16"}) {
        for (const auto& shown : {tests::inches, tests::millimetres}) {
            tests::PrintedSample sample("work_counter.json", shown);
            sample.project.stock[0].section = section;
            sample.resolved = model::resolve(sample.project, shipped_catalogue());
            for (const auto paper : {engine::Paper::letter, engine::Paper::a4}) {
                const auto count = check_folds(sample, paper);
                all.folds += count.folds;
                all.broken += count.broken;
            }
        }
    }
    CHECK(all.folds > 40);
    CHECK(all.broken > 5);
}
