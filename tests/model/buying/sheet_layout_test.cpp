#include "model/buying/sheet_layout.h"

#include "model/project/project_json.h"
#include "model/resolve/resolve.h"
#include "model/schedule/sheet.h"

#include "tests/model/catalogue/shipped_catalogue.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <fstream>
#include <iterator>

using namespace engine::literals;

namespace {

struct Job {
    model::Project project;
    model::Resolved resolved;
};

const Job& tool_cabinet() {
    static const Job job = [] {
        std::ifstream in(std::string(BARWRIGHT_SAMPLES) + "/tool_cabinet.json", std::ios::binary);
        const std::string text{std::istreambuf_iterator<char>(in), {}};
        auto read = model::read_project_json(text);
        if (!read) FAIL(engine::to_text(read.error()));
        Job made{*read, {}};
        made.resolved = model::resolve(made.project, shipped_catalogue());
        return made;
    }();
    return job;
}

std::vector<model::SheetPlan> plans(const model::PriceList* prices) {
    return model::sheet_plans(tool_cabinet().project, shipped_catalogue(), tool_cabinet().resolved,
                              prices);
}

}  // namespace

TEST_CASE("sheets of a usual size are assumed where nobody states one", "[model][buying][sheet]") {
    const auto all = plans(nullptr);
    REQUIRE_FALSE(all.empty());
    for (const auto& plan : all) {
        CHECK(plan.is_size_assumed);
        CHECK(plan.sheets[0].size == std::array{(48_in).nm(), (96_in).nm()});
        CHECK_FALSE(plan.sheets[0].price);
        CHECK(plan.used > 0.0);
        CHECK(plan.used <= 1.0);
    }
    CHECK(model::usual_sheet_size({.form = engine::TapeForm::millimetre}) ==
          std::array{1250_mm, 2500_mm});
}

TEST_CASE("every part of sheet but shims is laid once", "[model][buying][sheet]") {
    const auto rows =
        model::sheet_rows(tool_cabinet().project, shipped_catalogue(), tool_cabinet().resolved);
    std::vector<int> laid(rows.size());
    for (const auto& plan : plans(nullptr)) {
        for (const auto& sheet : plan.sheets) {
            for (const auto& part : sheet.parts) {
                const auto& row = rows[part.row];
                ++laid[part.row];
                CHECK(row.material == plan.material);
                CHECK(part.size[part.is_turned ? 0 : 1] == row.length.nm());
                CHECK(part.size[part.is_turned ? 1 : 0] == row.width.nm());
            }
        }
    }
    for (std::size_t i = 0; i < rows.size(); ++i)
        CHECK(laid[i] == (rows[i].material.empty() ? 0 : rows[i].quantity));
}

TEST_CASE("sheets of a price list serve parts of just their thickness", "[model][buying][sheet]") {
    model::PriceList prices;
    prices.sheets = {{.material = "birch plywood",
                      .thickness = 16_in_64,
                      .size = {60_in, 60_in},
                      .has_grain = true,
                      .price = 4'800},
                     {.material = "birch plywood", .thickness = 8_in_64, .size = {60_in, 60_in}}};
    for (const auto& plan : plans(&prices)) {
        if (plan.material != "birch plywood") continue;
        CHECK_FALSE(plan.is_size_assumed);
        REQUIRE_FALSE(plan.sheets.empty());
        CHECK(plan.sheets[0].price == 4'800);
        CHECK(plan.sheets[0].has_grain);
        for (const auto& part : plan.sheets[0].parts) CHECK_FALSE(part.is_turned);
    }
}

TEST_CASE("parts too large for any sheet are told", "[model][buying][sheet]") {
    model::PriceList prices;
    prices.sheets = {
        {.material = "birch plywood", .thickness = 16_in_64, .size = {1_in, 1_in}, .price = 100}};
    for (const auto& plan : plans(&prices)) {
        if (plan.material != "birch plywood") continue;
        CHECK(plan.sheets.empty());
        CHECK_FALSE(plan.too_large.empty());
    }
}

TEST_CASE("sheets that were paid for are used first, whatever the size that is sold now",
          "[model][buying][sheet]") {
    model::PriceList prices;
    prices.sheets = {{.material = "birch plywood",
                      .thickness = 16_in_64,
                      .size = {60_in, 60_in},
                      .price = 4'800}};
    const auto of_plywood = [&](const std::vector<model::PaidSheet>& paid) {
        auto all = model::sheet_plans(tool_cabinet().project, shipped_catalogue(),
                                      tool_cabinet().resolved, &prices, paid);
        const auto found = std::ranges::find(all, "birch plywood", &model::SheetPlan::material);
        REQUIRE(found != all.end());
        return *found;
    };
    const auto paid_in = [](const model::SheetPlan& plan) {
        return std::ranges::count(plan.sheets, true, &model::LaidSheet::is_paid);
    };
    CHECK(paid_in(of_plywood({})) == 0);
    // As many as were planned before anybody asked that seller.
    const auto before = plans(nullptr);
    const auto was = std::ranges::find(before, "birch plywood", &model::SheetPlan::material);
    REQUIRE(was != before.end());
    const auto count = static_cast<int>(was->sheets.size());
    const std::string name = "sheet birch plywood";
    const auto after = of_plywood({{name, {16_in_64, 48_in, 96_in}, count}});
    CHECK(paid_in(after) == std::ssize(after.sheets));
    CHECK(after.left_out.empty());
    // Of another thickness or of another material they serve nothing.
    CHECK(paid_in(of_plywood({{name, {8_in_64, 48_in, 96_in}, count}})) == 0);
    CHECK(paid_in(of_plywood({{"sheet oak", {16_in_64, 48_in, 96_in}, count}})) == 0);
    // One too small for any part is not used, and nothing is left out for it.
    const auto tiny = of_plywood({{name, {16_in_64, 1_in, 1_in}, 9}});
    CHECK(paid_in(tiny) == 0);
    CHECK(tiny.too_large.empty());
}
