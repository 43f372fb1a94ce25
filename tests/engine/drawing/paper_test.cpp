#include "engine/drawing/paper.h"

#include <catch2/catch.hpp>

using namespace engine;

TEST_CASE("sheets have the sizes of their standards", "[engine][drawing]") {
    CHECK(paper_size(Paper::a4) == PaperSize{210, 297});
    CHECK(paper_size(Paper::a3, PaperTurn::landscape) == PaperSize{420, 297});
    CHECK(paper_size(Paper::letter).width == Approx(8.5 * 25.4));
    CHECK(paper_size(Paper::letter).height == Approx(11 * 25.4));
    CHECK(paper_size(Paper::tabloid).width == Approx(11 * 25.4));
    CHECK(paper_size(Paper::tabloid).height == Approx(17 * 25.4));
}

TEST_CASE("a sheet is known by its name", "[engine][drawing]") {
    for (const auto paper : {Paper::a4, Paper::a3, Paper::letter, Paper::tabloid})
        CHECK(paper_named(name_of(paper)) == paper);
    CHECK(paper_named("A4") == Paper::a4);
    CHECK(paper_named("Letter") == Paper::letter);
    for (const char* wrong : {"", "a", "a44", "a5", "letter "}) CHECK(!paper_named(wrong));
}
