// Tables of angles, channels and tubes put the longer leg or the web upright; the catalogue puts
// leg a, the web and a flat bar's width along its first axis. So their x axis is our first for
// angles and tubes entered with the shorter side as a, and our second for channels and flats.
#include "engine/statics/torsion.h"
#include "model/catalogue/section_shape.h"

#include "tests/reference/reference_table.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <functional>

namespace {

using engine::SectionProperties;
using model::Section;
using model::SectionForm;
using namespace engine::literals;

constexpr double mm_per_inch = 25.4;

engine::Length length_of(const ReferenceRow& row, const std::string& column) {
    const bool inch = row.text("unit") == "in";
    const double nm =
        static_cast<double>(inch ? engine::Length::nm_per_inch : engine::Length::nm_per_mm);
    return engine::Length::from_nm(std::llround(row.number(column) * nm));
}

Section section_of(const ReferenceRow& row) {
    const std::map<std::string, SectionForm> forms = {{"angle", SectionForm::angle},
                                                      {"flat", SectionForm::flat},
                                                      {"channel", SectionForm::channel},
                                                      {"tube", SectionForm::tube}};
    Section section;
    section.form = forms.at(row.text("form"));
    section.a = length_of(row, "a");
    section.b = length_of(row, "b");
    section.thickness = length_of(row, "thickness");
    section.web_thickness = length_of(row, "web");
    section.root_radius = length_of(row, "root");
    section.toe_radius = length_of(row, "toe");
    return section;
}

// The properties in the table's axes: x to the right, y up.
struct Upright {
    double x, y, ix, iy, zx, zy;
    double shear_x, shear_y;
    double depth;
};

Upright upright(const Section& section, const SectionProperties& of) {
    const bool lies = section.form == SectionForm::channel || section.form == SectionForm::flat;
    if (!lies) {
        return {of.centroid[0],     of.centroid[1],     of.ix,         of.iy, of.zx, of.zy,
                of.shear_centre[0], of.shear_centre[1], section.b.mm()};
    }
    return {of.centroid[1],     of.centroid[0],     of.iy,         of.ix, of.zy, of.zx,
            of.shear_centre[1], of.shear_centre[0], section.a.mm()};
}

// Plastic moduli about the principal axes: those of the shape turned until they lie level.
SectionProperties turned_to_principal(const Section& section, double major_angle) {
    auto shape = model::section_shape(section);
    for (auto& loop : shape.loops) {
        for (auto& [a, b] : loop) {
            const double before = a;
            a = before * std::cos(major_angle) + b * std::sin(major_angle);
            b = b * std::cos(major_angle) - before * std::sin(major_angle);
        }
    }
    return engine::polygon_properties(shape);
}

struct Property {
    int power;  // of the length unit
    std::function<double()> value;
};

double value_in(const std::string& unit, const Property& property) {
    const double scale = unit == "in" ? std::pow(mm_per_inch, property.power) : 1.0;
    return property.value() / scale;
}

double pounds_per_foot(double area_mm2) {
    constexpr double pounds_per_cubic_inch = 0.098;  // 6061; Aluminum Design Manual, from memory
    return area_mm2 / (mm_per_inch * mm_per_inch) * 12.0 * pounds_per_cubic_inch;
}

Property property_named(const std::string& name, const Section& s, const SectionProperties& of) {
    const auto u = upright(s, of);
    const auto wall = s.form == SectionForm::channel ? s.web_thickness.mm() : s.thickness.mm();
    const double degrees = 180.0 / std::acos(-1.0);
    const std::map<std::string, Property> all = {
        {"area", {2, [&] { return of.area; }}},
        {"x", {1, [&] { return u.x; }}},
        {"y", {1, [&] { return u.y; }}},
        {"x from middle line", {1, [&] { return u.x - wall / 2; }}},
        {"y from middle line", {1, [&] { return u.y - wall / 2; }}},
        {"Ix", {4, [&] { return u.ix; }}},
        {"Iy", {4, [&] { return u.iy; }}},
        {"Ixy", {4, [&] { return of.ixy; }}},
        {"I major", {4, [&] { return of.i_major; }}},
        {"I minor", {4, [&] { return of.i_minor; }}},
        {"r minor", {1, [&] { return of.r_minor; }}},
        {"rx", {1, [&] { return std::sqrt(u.ix / of.area); }}},
        {"ry", {1, [&] { return std::sqrt(u.iy / of.area); }}},
        {"Sx", {3, [&] { return u.ix / (u.depth / 2); }}},
        {"Zx", {3, [&] { return u.zx; }}},
        {"Zy", {3, [&] { return u.zy; }}},
        {"Z about major", {3, [&] { return turned_to_principal(s, of.major_angle).zx; }}},
        {"Z about minor", {3, [&] { return turned_to_principal(s, of.major_angle).zy; }}},
        {"J", {4, [&] { return of.j; }}},
        {"Cw", {6, [&] { return of.cw; }}},
        {"tan alpha", {0, [&] { return std::tan(of.major_angle); }}},
        {"major angle degrees", {0, [&] { return of.major_angle * degrees; }}},
        {"shear centre x", {1, [&] { return u.shear_x; }}},
        {"shear centre y", {1, [&] { return u.shear_y; }}},
        {"shear centre behind web", {1, [&] { return -u.shear_x; }}},
        {"shear centre from centroid", {1, [&] { return u.shear_x - u.x; }}},
        {"area in2", {2, [&] { return of.area; }}},
        {"lb per ft at 0.098 lb/in3", {0, [&] { return pounds_per_foot(of.area); }}},
    };
    const auto found = all.find(name);
    if (found == all.end()) FAIL("no property is called " << name);
    return {found->second.power, [value = found->second.value()] { return value; }};
}

double percent_off(double value, double expected) {
    return 100.0 * std::abs(value - expected) / std::abs(expected);
}

}  // namespace

TEST_CASE("section properties are those of published tables", "[reference][sections]") {
    for (const auto& row : reference_rows("section_properties.csv")) {
        const auto section = section_of(row);
        const auto property =
            property_named(row.text("property"), section, model::section_properties(section));
        const double value = value_in(row.text("unit"), property);
        INFO(row.name() << ": " << row.text("section") << ", " << row.text("property")
                        << " is published as " << row.text("expected") << ", here " << value);
        CHECK(percent_off(value, row.number("expected")) <= row.number("tolerance_percent"));
    }
}

TEST_CASE("the catalogue's sections weigh what their makers publish", "[reference][sections]") {
    const auto catalogue = model::load_catalogue(BARWRIGHT_ASSETS);
    REQUIRE(catalogue);
    for (const auto& row : reference_rows("catalogue_areas.csv")) {
        const auto* section = model::find_section(*catalogue, row.text("section"));
        INFO(row.name() << ": " << row.text("section"));
        REQUIRE(section != nullptr);
        const auto property =
            property_named(row.text("property"), *section, model::section_properties(*section));
        const double value = value_in("in", property);
        INFO("published " << row.text("expected") << ", here " << value);
        CHECK(percent_off(value, row.number("expected")) <= row.number("tolerance_percent"));
    }
}

// The polar radius of gyration that the table gives about the shear centre tells where it takes
// that centre to be: all else here is the table's own.
TEST_CASE("an angle's shear centre is where the tables take it", "[reference][sections]") {
    for (const auto& row : reference_rows("shear_centres.csv")) {
        Section angle;
        angle.a = angle.b = 6_in;
        angle.thickness = engine::Length::from_nm(std::llround(
            row.number("thickness") * static_cast<double>(engine::Length::nm_per_inch)));
        const auto centre = model::section_properties(angle).shear_centre;
        const double off_x = row.number("x") - centre[0] / mm_per_inch;
        const double off_y = row.number("y") - centre[1] / mm_per_inch;
        const double own = (row.number("Ix") + row.number("Iy")) / row.number("area");
        const double polar = std::sqrt(off_x * off_x + off_y * off_y + own);
        INFO(row.name() << ": " << row.text("section") << " has " << row.text("ro") << ", here "
                        << polar);
        CHECK(percent_off(polar, row.number("ro")) <= row.number("tolerance_percent"));
    }
}

// Timoshenko and Goodier, article 109: J / (long side x short side cubed), from memory.
TEST_CASE("a rectangle's torsion constant is that of the textbook's table",
          "[reference][sections]") {
    const auto [ratio, factor] = GENERATE(
        table<double, double>({{1.0, 0.14058}, {2.0, 0.22868}, {4.0, 0.28081}, {8.0, 0.30707}}));
    CAPTURE(ratio);
    CHECK(engine::rectangle_torsion(ratio, 1.0) / ratio == Approx(factor).epsilon(1e-4));
}
