// The schema and the program must know the same fields.
#include "engine/files/whole_file.h"
#include "model/project/project_fields.h"
#include "model/project/project_json.h"

#include "tests/model/project/full_project.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cstdlib>
#include <filesystem>

using namespace model;
using nlohmann::ordered_json;

namespace {

ordered_json schema() {
    const auto text =
        engine::read_whole_file(std::filesystem::path(BARWRIGHT_ASSETS) / "barwright.schema.json");
    if (!text) FAIL(engine::to_text(text.error()));
    return ordered_json::parse(*text);
}

struct Keys {
    std::vector<std::string> all;
    std::vector<std::string> needed;

    template <class Member>
    void operator()(const Field& field, Member) {
        add(field);
    }
    template <class Alternatives, class Member>
    void one_of(const Alternatives& alternatives, Member) {
        for (const Field& field : alternatives) add(field);
    }

    void add(const Field& field) {
        all.emplace_back(field.key);
        if (field.is_needed) needed.emplace_back(field.key);
    }
};

template <class T>
void check_same_fields(const ordered_json& it) {
    Keys keys;
    if constexpr (std::is_same_v<T, Project>) keys.add(needed("barwright"));
    visit_fields(keys, Of<T>{});
    std::vector<std::string> properties;
    for (const auto& [key, unused] : it["properties"].items()) properties.push_back(key);
    INFO(thing_name<T>);
    CHECK(properties == keys.all);
    CHECK(it["required"].get<std::vector<std::string>>() == keys.needed);
    CHECK(it["additionalProperties"] == false);
}

template <class T>
void check_definition(const ordered_json& schema) {
    std::string name{thing_name<T>};
    std::replace(name.begin(), name.end(), ' ', '_');
    INFO(name);
    REQUIRE(schema["$defs"].contains(name));
    check_same_fields<T>(schema["$defs"][name]);
}

}  // namespace

TEST_CASE("the schema lists the program's fields, in order, and no others", "[model][project]") {
    const ordered_json it = schema();
    check_same_fields<Project>(it);
    check_definition<engine::TapeStyle>(it);
    check_definition<Dimension>(it);
    check_definition<Obstacle>(it);
    check_definition<BoxObstacle>(it);
    check_definition<WheelWell>(it);
    check_definition<WallProfile>(it);
    check_definition<WallProfile::Offset>(it);
    check_definition<WallProfile::Station>(it);
    check_definition<CeilingProfile>(it);
    check_definition<CeilingProfile::Offset>(it);
    check_definition<CeilingProfile::Station>(it);
    check_definition<CylinderObstacle>(it);
    check_definition<DoorSwing>(it);
    check_definition<ScannedObstacle>(it);
    check_definition<Stock>(it);
    check_definition<BarOffer>(it);
    check_definition<Offcut>(it);
    check_definition<BarCut>(it);
    check_definition<BarAtSaw>(it);
    check_definition<Supplier>(it);
    check_definition<Frame>(it);
    check_definition<Plane>(it);
    check_definition<Bay>(it);
    check_definition<Member>(it);
    check_definition<Diagonal>(it);
    check_definition<Leaning>(it);
    check_definition<JointOverride>(it);
    check_definition<Panel>(it);
    check_definition<CutOut>(it);
    check_definition<Load>(it);
    check_definition<MeasuredOpening>(it);
    check_definition<Shop>(it);
}

// schema_test.py checks that file against the schema. APPROVE=1 writes it anew.
TEST_CASE("the file with every field in use is what the program writes", "[model][project]") {
    const auto path =
        std::filesystem::path(BARWRIGHT_TESTS) / "model" / "project" / "full_project.json";
    const std::string written = to_json_text(model_tests::full_project());
    if (std::getenv("APPROVE") != nullptr) {
        REQUIRE(engine::write_whole_file(path, written).has_value());
    }
    const auto text = engine::read_whole_file(path);
    if (!text) FAIL(engine::to_text(text.error()));
    CHECK(*text == written);
}
