#include "model/book/drill_strips.h"

#include "tests/model/book/printed_sample.h"

#include <catch2/catch.hpp>

using engine::Length;
using model::printer_scale;

namespace {

model::Project shown_in(const engine::TapeStyle& style) {
    model::Project project;
    project.shown = style;
    return project;
}

Length millimetres_of(double mm) { return Length::from_nm(static_cast<std::int64_t>(mm * 1e6)); }

}  // namespace

TEST_CASE("the ruler that is measured is one that the project's tape shows", "[model][book]") {
    CHECK(model::measured_ruler(shown_in(tests::inches)) == millimetres_of(101.6));
    CHECK(model::measured_ruler(shown_in(tests::millimetres)) == millimetres_of(100));
}

TEST_CASE("what the rulers measure tells what the printer does", "[model][book]") {
    const auto scale =
        printer_scale(shown_in(tests::millimetres), millimetres_of(99.5), millimetres_of(101));
    REQUIRE(scale);
    CHECK(scale->across == Approx(0.995));
    CHECK(scale->down == Approx(1.01));
    const auto half = printer_scale(shown_in(tests::inches), {}, millimetres_of(101.6));
    REQUIRE(half);
    CHECK(*half == model::PrinterScale{});
}

TEST_CASE("a ruler that is more than 5 % off is refused", "[model][book]") {
    const auto project = shown_in(tests::millimetres);
    CHECK(printer_scale(project, millimetres_of(105), {}));
    CHECK(printer_scale(project, {}, millimetres_of(95)));
    const auto fitted = printer_scale(project, millimetres_of(94), {});
    REQUIRE_FALSE(fitted);
    CHECK(fitted.error().code == engine::ErrorCode::out_of_range);
    CHECK(fitted.error().where == "ruler across");
    CHECK_THAT(fitted.error().message, Catch::Contains("100 mm") && Catch::Contains("94 mm"));
    const auto inch = printer_scale(project, {}, millimetres_of(4));
    REQUIRE_FALSE(inch);
    CHECK(inch.error().where == "ruler down");
}
