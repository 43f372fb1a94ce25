#include "model/resolve/finding.h"

#include <catch2/catch.hpp>

TEST_CASE("a finding says where it is, naming a frame once", "[model][finding]") {
    const model::Finding finding{
        .code = "loose_end",
        .concerns = {{model::SubjectKind::member, "counter", "post left"},
                     {model::SubjectKind::member, "counter", "rail front top"}}};
    CHECK(model::where_text(finding) == "counter: member post left, member rail front top");
}

TEST_CASE("a depth is told in marks that a tape has", "[model][finding]") {
    const engine::TapeStyle inches;
    const engine::TapeStyle mm{.form = engine::TapeForm::millimetre, .decimals = 1};
    const auto depth = engine::Length::from_nm(9'428'480);  // 0.3712 in
    CHECK(model::depth_in_words(depth, inches) == "3/8 in");
    CHECK(model::depth_in_words(depth, mm) == "9.5 mm");
    CHECK(model::depth_in_words(engine::Length::from_nm(396'875 * 3), inches) == "3/64 in");
    CHECK(model::depth_in_words(engine::Length::from_nm(1), inches) == "1/64 in");
}
