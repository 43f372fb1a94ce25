// Short ways to state frames, stock and lengths in tests.
#pragma once

#include "engine/geometry/box.h"
#include "model/catalogue/catalogue.h"
#include "model/project/project.h"

#include <array>
#include <string>
#include <string_view>
#include <vector>

namespace tests {

using engine::Nm;

constexpr Nm inches_64(Nm count) { return count * 396'875; }
constexpr Nm inches(Nm count) { return count * 25'400'000; }
constexpr Nm millimetres(Nm count) { return count * 1'000'000; }

// An exact formula: "18 24/64 in" where the length lies on a 1/64 in, otherwise "463.123457 mm".
std::string formula_of(Nm length);

// Stock whose bars are 20 ft (6 m for a metric section) long.
model::Stock stock_of(std::string name,
                      std::string section,
                      std::string alloy,
                      bool metric = false);

// A frame in the making. Planes are named after their axis and position, and made when first asked
// for.
class FrameBuilder {
public:
    explicit FrameBuilder(std::string name) { frame_.name = std::move(name); }

    std::string plane(model::Axis axis, Nm position);

    // Names the member after its place in the list: "m7". Positions in nm; `on` in the order of
    // across(run).
    model::Member& member(std::string stock,
                          model::Axis run,
                          std::array<Nm, 2> on,
                          Nm from,
                          Nm to,
                          std::array<model::Sense, 2> legs);

    model::Frame& frame() { return frame_; }

private:
    model::Frame frame_;
};

// A box with rails round bottom, top and each shelf level, legs inward; the rails of the shelves
// hang below their level. Twelve edges, and four rails a shelf.
struct BoxShape {
    Nm width = inches(36);
    Nm depth = inches(18);
    Nm height = inches(30);
    std::vector<Nm> shelves;
    std::string posts = "main";
    std::string x_rails = "main";
    std::string y_rails = "main";
};

model::Frame box_frame(std::string name, const BoxShape& shape);

// One frame of one stock, shown in inches.
model::Project box_project(const BoxShape& shape, std::string section, std::string alloy);

// The id of the catalogue's section of that form and size; empty where there is none. With
// `filleted` one with a root radius, otherwise one without.
std::string section_id(const model::Catalogue& catalogue,
                       model::SectionForm form,
                       Nm a,
                       Nm b,
                       Nm thickness,
                       bool filleted = false);

}  // namespace tests
