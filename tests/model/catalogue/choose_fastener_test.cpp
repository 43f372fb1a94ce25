#include "tests/model/catalogue/shipped_catalogue.h"

#include <catch2/catch.hpp>

using namespace engine::literals;
using engine::Length;

namespace {

std::string code_for(const std::string& rivet_id, Length stack) {
    const auto* rivet = model::find_rivet(shipped_catalogue(), rivet_id);
    REQUIRE(rivet != nullptr);
    const auto* grip = model::grip_for(*rivet, stack);
    return grip == nullptr ? "none" : grip->code;
}

}  // namespace

TEST_CASE("the grips of a rivet meet without gap or overlap", "[model][catalogue][grip]") {
    for (const auto& rivet : shipped_catalogue().rivets) {
        CAPTURE(rivet.id);
        REQUIRE_FALSE(rivet.grips.empty());
        for (std::size_t i = 1; i < rivet.grips.size(); ++i) {
            CAPTURE(rivet.grips[i].code);
            CHECK(rivet.grips[i].least == rivet.grips[i - 1].most);
        }
    }
}

TEST_CASE("inch grip limits are whole sixteenths named by the code", "[model][catalogue][grip]") {
    for (const auto& rivet : shipped_catalogue().rivets) {
        if (rivet.system != model::MeasureSystem::inch) continue;
        for (const auto& grip : rivet.grips) {
            CAPTURE(grip.code);
            const auto sixteenths = std::stoll(grip.code.substr(grip.code.find('-') + 1));
            CHECK(grip.most == 4_in_64 * sixteenths);
            CHECK(grip.body_length > grip.most);
        }
    }
}

TEST_CASE("a stack on a limit belongs to the lower grip", "[model][catalogue][grip]") {
    CHECK(code_for("blind rivet 1/8", 16_in_64) == "4-4");
    CHECK(code_for("blind rivet 1/8", 20_in_64) == "4-5");
    CHECK(code_for("blind rivet 4.0 mm", 5_mm) == "4 x 8");
}

TEST_CASE("a nanometre over a limit takes the next grip", "[model][catalogue][grip]") {
    const auto one = Length::from_nm(1);
    CHECK(code_for("blind rivet 1/8", 16_in_64 + one) == "4-5");
    CHECK(code_for("blind rivet 1/8", 16_in_64 - one) == "4-4");
}

TEST_CASE("a stack thinner or thicker than any grip has none", "[model][catalogue][grip]") {
    CHECK(code_for("blind rivet 1/8", 1_in_64) == "none");
    CHECK(code_for("blind rivet 1/8", 41_in_64) == "none");
    CHECK(code_for("blind rivet 1/4", 7_in_64) == "none");
    CHECK(code_for("blind rivet 1/4", 8_in_64) == "8-4");
}

TEST_CASE("of two grips that hold a stack the one nearer mid-range is taken",
          "[model][catalogue][grip]") {
    model::BlindRivet rivet;
    rivet.grips = {{.code = "short", .least = 0_mm, .most = 6_mm},
                   {.code = "long", .least = 3_mm, .most = 9_mm}};
    CHECK(model::grip_for(rivet, 4_mm)->code == "short");
    CHECK(model::grip_for(rivet, 5_mm)->code == "long");
}

TEST_CASE("the rivet by the rule is the smallest at least as thick as the thickest plate",
          "[model][catalogue]") {
    using model::MeasureSystem;
    const auto id = [](MeasureSystem system, Length thickest) {
        return model::rivet_for(shipped_catalogue(), system, thickest)->id;
    };
    CHECK(id(MeasureSystem::inch, 8_in_64) == "blind rivet 1/8");
    CHECK(id(MeasureSystem::inch, 9_in_64) == "blind rivet 5/32");
    CHECK(id(MeasureSystem::inch, 4_in_64) == "blind rivet 3/32");
    CHECK(id(MeasureSystem::metric, 3_mm) == "blind rivet 3.0 mm");
    CHECK(id(MeasureSystem::inch, 1_in) == "blind rivet 1/4");
}

TEST_CASE("a catalogue without rivets of the system gives none", "[model][catalogue]") {
    CHECK(model::rivet_for({}, model::MeasureSystem::inch, 8_in_64) == nullptr);
}
