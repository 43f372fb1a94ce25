#include "model/catalogue/read_tables.h"

#include <algorithm>

namespace model {
namespace {

SectionForm form_of(Row& row) {
    const auto field = row.text("form");
    if (field == "flat") return SectionForm::flat;
    if (field == "channel") return SectionForm::channel;
    if (field == "tube") return SectionForm::tube;
    if (field != "angle") {
        row.fail("form", "'" + field + "' is none of angle, flat, channel, tube");
    }
    return SectionForm::angle;
}

// Walls and radii that leave no room for one another would fold the outline over itself.
void check_fits(const Section& section, Row& row) {
    const engine::Length zero;
    const auto t = section.thickness;
    if (t <= zero) row.fail("thickness", "a wall has to have a thickness");
    if (section.form == SectionForm::flat) {
        if (section.a <= zero) row.fail("a", "a flat bar has to have a width");
        if (section.b != zero) row.fail("b", "a flat bar has no second side; write 0");
        return;
    }
    const auto walls = section.form == SectionForm::angle ? 1 : 2;
    const auto across_b = section.form == SectionForm::channel ? section.web_thickness : t * walls;
    const auto toe = section.form == SectionForm::tube ? zero : section.toe_radius;
    const auto inner_a = section.a - t * walls - section.root_radius * walls - toe;
    const auto inner_b = section.b - across_b - section.root_radius - toe;
    if (inner_a <= zero) row.fail("a", "the walls and radii leave no room along side a");
    if (inner_b <= zero) row.fail("b", "the walls and radii leave no room along side b");
    if (section.form == SectionForm::channel && section.web_thickness <= zero) {
        row.fail("web_thickness", "a channel's web has to have a thickness");
    }
    if (section.form != SectionForm::tube && section.toe_radius > t) {
        row.fail("toe_radius", "a toe cannot be rounded by more than its thickness");
    }
    if (section.form == SectionForm::tube &&
        section.toe_radius * 2 > std::min(section.a, section.b)) {
        row.fail("toe_radius", "the corners are rounded by more than half a side");
    }
}

Section read_section(Row& row) {
    Section section;
    section.id = row.text("id");
    section.form = form_of(row);
    section.system = row.system();
    section.a = row.length("a", section.system);
    section.b = row.length("b", section.system);
    section.thickness = row.length("thickness", section.system);
    section.web_thickness = row.length_or_zero("web_thickness", section.system);
    section.root_radius = row.length_or_zero("root_radius", section.system);
    section.toe_radius = row.length_or_zero("toe_radius", section.system);
    section.usual_alloy = row.text("usual_alloy");
    section.usual_lengths = row.text("usual_lengths");
    section.source = row.text("source");
    check_fits(section, row);
    return section;
}

Alloy read_alloy(Row& row) {
    return {.id = row.text("id"),
            .name = row.text("name"),
            .density_kg_m3 = row.number("density_kg_m3"),
            .yield_mpa = row.number("yield_mpa"),
            .ultimate_mpa = row.number("ultimate_mpa"),
            .elastic_mpa = row.number("elastic_mpa"),
            .shear_elastic_mpa = row.number("shear_elastic_mpa"),
            .source = row.text("source")};
}

SheetMaterial read_sheet_material(Row& row) {
    return {.id = row.text("id"),
            .density_kg_m3 = row.number("density_kg_m3"),
            .source = row.text("source")};
}

}  // namespace

engine::Result<std::vector<Section>> read_sections(const Table& table) {
    return rows_as<Section>(table, read_section);
}

engine::Result<std::vector<Alloy>> read_alloys(const Table& table) {
    return rows_as<Alloy>(table, read_alloy);
}

engine::Result<std::vector<SheetMaterial>> read_sheet_materials(const Table& table) {
    return rows_as<SheetMaterial>(table, read_sheet_material);
}

}  // namespace model
