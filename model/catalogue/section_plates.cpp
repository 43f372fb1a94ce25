#include "model/catalogue/catalogue.h"

namespace model {
namespace {

using engine::Nm;

SectionPlate across_a(std::string_view name, int outward, Nm lo_b, Nm hi_b, Nm a) {
    return {.name = name, .normal_axis = 1, .outward = outward, .lo = {0, lo_b}, .hi = {a, hi_b}};
}

SectionPlate across_b(std::string_view name, int outward, Nm lo_a, Nm hi_a, Nm b) {
    return {.name = name, .normal_axis = 0, .outward = outward, .lo = {lo_a, 0}, .hi = {hi_a, b}};
}

// The square in an inner corner that its rounding fills or takes away; from `corner` towards the
// given signs.
void add_fillet(std::vector<SectionPlate>& plates,
                Nm radius,
                std::array<Nm, 2> corner,
                std::array<int, 2> towards) {
    if (radius <= 0) return;
    SectionPlate fillet{.name = "root fillet", .is_root_fillet = true};
    for (std::size_t i = 0; i < 2; ++i) {
        const Nm other = corner[i] + radius * towards[i];
        fillet.lo[i] = std::min(corner[i], other);
        fillet.hi[i] = std::max(corner[i], other);
    }
    plates.push_back(fillet);
}

}  // namespace

std::vector<SectionPlate> section_plates(const Section& section) {
    const Nm a = section.a.nm();
    const Nm b = section.b.nm();
    const Nm t = section.thickness.nm();
    const Nm web = section.web_thickness.nm();
    const Nm root = section.root_radius.nm();
    std::vector<SectionPlate> plates;
    switch (section.form) {
        case SectionForm::angle:
            plates = {across_a("leg a", -1, 0, t, a), across_b("leg b", -1, 0, t, b)};
            add_fillet(plates, root, {t, t}, {1, 1});
            break;
        case SectionForm::flat:
            plates = {across_a("face", -1, 0, t, a)};
            break;
        case SectionForm::channel:
            plates = {across_a("web", -1, 0, web, a), across_b("near flange", -1, 0, t, b),
                      across_b("far flange", 1, a - t, a, b)};
            add_fillet(plates, root, {t, web}, {1, 1});
            add_fillet(plates, root, {a - t, web}, {-1, 1});
            break;
        case SectionForm::tube:
            plates = {across_a("side a", -1, 0, t, a), across_b("side b", -1, 0, t, b),
                      across_a("far side a", 1, b - t, b, a),
                      across_b("far side b", 1, a - t, a, b)};
            add_fillet(plates, root, {t, t}, {1, 1});
            add_fillet(plates, root, {a - t, t}, {-1, 1});
            add_fillet(plates, root, {a - t, b - t}, {-1, -1});
            add_fillet(plates, root, {t, b - t}, {1, -1});
            break;
    }
    return plates;
}

}  // namespace model
