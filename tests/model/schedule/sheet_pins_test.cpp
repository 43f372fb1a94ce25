#include "model/schedule/sheet_pins.h"

#include "tests/model/resolve/resolve_support.h"

using tests::inches_64;

namespace {

std::string pin_id(std::string_view rivet, engine::Nm stack) {
    const auto& catalogue = tests::shipped_catalogue();
    const auto* pin = model::pin_for(catalogue, *model::find_rivet(catalogue, rivet),
                                     engine::Length::from_nm(stack));
    return pin == nullptr ? std::string{"none"} : pin->id;
}

}  // namespace

TEST_CASE("every inch rivet's hole takes the pin of its size", "[model][schedule][pins]") {
    for (const auto& rivet : tests::shipped_catalogue().rivets) {
        if (rivet.system != model::MeasureSystem::inch) continue;
        CAPTURE(rivet.id);
        const auto* pin = model::pin_for(tests::shipped_catalogue(), rivet,
                                         engine::Length::from_nm(inches_64(8)));
        REQUIRE(pin != nullptr);
        CHECK(pin->diameter == rivet.diameter);
    }
}

TEST_CASE("a metric rivet's hole takes the pin that fits it", "[model][schedule][pins]") {
    CHECK(pin_id("blind rivet 3.2 mm", tests::millimetres(3)) == "sheet pin 1/8");
    CHECK(pin_id("blind rivet 4.0 mm", tests::millimetres(3)) == "sheet pin 5/32");
    CHECK(pin_id("blind rivet 3.0 mm", tests::millimetres(3)) == "sheet pin 3.0 mm");
}
