#include "tests/model/catalogue/shipped_catalogue.h"

#include <catch2/catch.hpp>

#include <algorithm>

using model::Section;
using model::SectionForm;
using model::SectionPlate;

namespace {

std::vector<SectionPlate> walls_of(const Section& section) {
    auto plates = model::section_plates(section);
    std::erase_if(plates, [](const SectionPlate& plate) { return plate.is_root_fillet; });
    return plates;
}

double area_of(std::array<engine::Nm, 2> lo, std::array<engine::Nm, 2> hi) {
    const auto a = std::max<engine::Nm>(0, hi[0] - lo[0]);
    const auto b = std::max<engine::Nm>(0, hi[1] - lo[1]);
    return static_cast<double>(a) * static_cast<double>(b);
}

// Walls meet in squares at the corners and nowhere else, and no three share one.
double area_of_union(const std::vector<SectionPlate>& walls) {
    double area = 0.0;
    for (std::size_t i = 0; i < walls.size(); ++i) {
        area += area_of(walls[i].lo, walls[i].hi);
        for (std::size_t j = 0; j < i; ++j) {
            std::array<engine::Nm, 2> lo{};
            std::array<engine::Nm, 2> hi{};
            for (std::size_t k = 0; k < 2; ++k) {
                lo[k] = std::max(walls[i].lo[k], walls[j].lo[k]);
                hi[k] = std::min(walls[i].hi[k], walls[j].hi[k]);
            }
            area -= area_of(lo, hi);
        }
    }
    return area;
}

// The area of the square-cornered section by subtraction from its bounding rectangle.
double expected_area(const Section& s) {
    const auto a = static_cast<double>(s.a.nm());
    const auto b = static_cast<double>(s.b.nm());
    const auto t = static_cast<double>(s.thickness.nm());
    const auto web = static_cast<double>(s.web_thickness.nm());
    switch (s.form) {
        case SectionForm::angle:
            return a * b - (a - t) * (b - t);
        case SectionForm::flat:
            return a * t;
        case SectionForm::channel:
            return a * b - (a - 2 * t) * (b - web);
        case SectionForm::tube:
            return a * b - (a - 2 * t) * (b - 2 * t);
    }
    return 0.0;
}

}  // namespace

TEST_CASE("the walls of every section add up to its area", "[model][catalogue][plates]") {
    for (const auto& section : shipped_catalogue().sections) {
        CAPTURE(section.id);
        CHECK(area_of_union(walls_of(section)) == Approx(expected_area(section)).epsilon(1e-12));
    }
}

TEST_CASE("every plate lies inside the section's rectangle", "[model][catalogue][plates]") {
    for (const auto& section : shipped_catalogue().sections) {
        CAPTURE(section.id);
        const auto height =
            section.form == SectionForm::flat ? section.thickness.nm() : section.b.nm();
        for (const auto& plate : model::section_plates(section)) {
            CAPTURE(plate.name);
            CHECK(plate.lo[0] >= 0);
            CHECK(plate.lo[1] >= 0);
            CHECK(plate.hi[0] <= section.a.nm());
            CHECK(plate.hi[1] <= height);
            CHECK(plate.lo[0] < plate.hi[0]);
            CHECK(plate.lo[1] < plate.hi[1]);
        }
    }
}

TEST_CASE("every wall's outer face lies on the section's rectangle", "[model][catalogue][plates]") {
    for (const auto& section : shipped_catalogue().sections) {
        CAPTURE(section.id);
        const std::array<engine::Nm, 2> far = {section.a.nm(), section.form == SectionForm::flat
                                                                   ? section.thickness.nm()
                                                                   : section.b.nm()};
        for (const auto& wall : walls_of(section)) {
            CAPTURE(wall.name);
            const auto axis = static_cast<std::size_t>(wall.normal_axis);
            if (wall.outward < 0)
                CHECK(wall.lo[axis] == 0);
            else
                CHECK(wall.hi[axis] == far[axis]);
        }
    }
}

TEST_CASE("the first wall has its outer face on b = 0 and spans a", "[model][catalogue][plates]") {
    for (const auto& section : shipped_catalogue().sections) {
        CAPTURE(section.id);
        const auto first = model::section_plates(section).front();
        CHECK(first.normal_axis == 1);
        CHECK(first.outward == -1);
        CHECK(first.lo == std::array<engine::Nm, 2>{0, 0});
        CHECK(first.hi[0] == section.a.nm());
    }
}

TEST_CASE("a rounded angle keeps its fillet's square free", "[model][catalogue][plates]") {
    const auto* angle = model::find_section(shipped_catalogue(), "angle 2 x 2 x 1/8 rounded");
    const auto plates = model::section_plates(*angle);
    REQUIRE(plates.size() == 3);
    CHECK(plates[2].is_root_fillet);
    const auto t = angle->thickness.nm();
    const auto inner = t + angle->root_radius.nm();
    CHECK(plates[2].lo == std::array<engine::Nm, 2>{t, t});
    CHECK(plates[2].hi == std::array<engine::Nm, 2>{inner, inner});
}

TEST_CASE("a rounded channel has a fillet at both ends of its web", "[model][catalogue][plates]") {
    const auto* channel =
        model::find_section(shipped_catalogue(), "channel 3 x 1 1/2 x 0.2 web 0.13 rounded");
    REQUIRE(channel != nullptr);
    const auto plates = model::section_plates(*channel);
    REQUIRE(plates.size() == 5);
    CHECK(plates[3].lo[0] == channel->thickness.nm());
    CHECK(plates[4].hi[0] == channel->a.nm() - channel->thickness.nm());
    CHECK(plates[4].lo[1] == channel->web_thickness.nm());
}

TEST_CASE("a tube with rounded inner corners keeps all four free", "[model][catalogue][plates]") {
    auto tube = *model::find_section(shipped_catalogue(), "tube 2 x 1 x 1/8");
    tube.root_radius = tube.thickness;
    const auto plates = model::section_plates(tube);
    REQUIRE(plates.size() == 8);
    const auto t = tube.thickness.nm();
    CHECK(plates[6].is_root_fillet);
    CHECK(plates[6].lo == std::array<engine::Nm, 2>{tube.a.nm() - 2 * t, tube.b.nm() - 2 * t});
    CHECK(plates[6].hi == std::array<engine::Nm, 2>{tube.a.nm() - t, tube.b.nm() - t});
}
