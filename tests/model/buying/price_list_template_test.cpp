#include "model/buying/price_list_template.h"

#include "model/buying/known_goods.h"
#include "model/resolve/resolve.h"

#include "tests/model/catalogue/shipped_catalogue.h"
#include "tests/model/schedule/small_job.h"
#include "tests/support/random_project.h"
#include "tests/support/seeds.h"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace engine::literals;

TEST_CASE("a list that is begun names all that the project needs", "[model][buying][template]") {
    const auto job = tests::small_job();
    const auto list = model::needed_goods(job.project, job.catalogue, job.resolved);
    REQUIRE(list.bars.size() == 2);
    CHECK(list.bars[0].section == "angle 1 x 1 x 1/8");
    CHECK(list.bars[0].length == 96_in);
    CHECK(list.bars[1].length == 48_in);
    std::vector<std::string> fasteners;
    for (const auto& box : list.boxes) fasteners.push_back(box.fastener);
    CHECK(fasteners == std::vector<std::string>{"blind rivet 1/8, grip 4-4",
                                                "machine screw 8-32 x 1/2 in",
                                                "nut for machine screw 8-32", "sheet pin 1/8"});
    CHECK(list.boxes[0].count == 100);
    CHECK(list.boxes[3].count == 1);
}

TEST_CASE("a stock without bars is asked for in one usual length", "[model][buying][template]") {
    auto job = tests::small_job();
    job.project.stock[0].bars.clear();
    const auto list = model::needed_goods(job.project, job.catalogue, job.resolved);
    CHECK(list.bars[0].length == 240_in);
}

TEST_CASE("bars of whole feet are asked for in feet, as the window shows them",
          "[model][buying][template]") {
    const auto job = tests::small_job();
    const auto text = model::price_list_template(job.project, job.catalogue, job.resolved);
    CHECK(text.find("angle 1 x 1 x 1/8 6063-T52,8 ft,") != std::string::npos);
    CHECK(text.find("96 in") == std::string::npos);
}

TEST_CASE("a list that is begun for a random skeleton reads back as it was, without a warning",
          "[model][buying][template]") {
    const auto& catalogue = shipped_catalogue();
    const auto cases = tests::seed_count(60);
    for (std::uint32_t seed = 0; seed < cases; ++seed) {
        CAPTURE(seed);
        const auto random = tests::random_project(seed, catalogue);
        const auto resolved = model::resolve(random.project, catalogue);
        const auto text = model::price_list_template(random.project, catalogue, resolved);
        const auto read = model::read_price_list(text, "begun.csv", catalogue,
                                                 engine::bare_unit(random.project.shown));
        if (!read) FAIL(engine::to_text(read.error()));
        CHECK(*read == model::needed_goods(random.project, catalogue, resolved));
    }
}

TEST_CASE("all that the catalogue holds has a name of its own in price lists",
          "[model][buying][template]") {
    const auto& catalogue = shipped_catalogue();
    const model::KnownGoods known{catalogue};
    for (const auto& section : catalogue.sections) {
        for (const auto& alloy : catalogue.alloys) {
            const auto goods = model::bar_goods(section.id, alloy.id);
            REQUIRE(known.find(goods.name) != nullptr);
            CHECK(*known.find(goods.name) == goods);
        }
    }
    for (const auto& nut : catalogue.rivet_nuts) {
        REQUIRE(known.find(nut.id) != nullptr);
        CHECK(known.find(nut.id)->what == nut.id);
    }
}
