#include "tests/model/catalogue/shipped_catalogue.h"

#include <catch2/catch.hpp>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <set>
#include <sstream>

namespace {

namespace fs = std::filesystem;
using namespace engine::literals;

// A copy of the shipped tables that a test may break.
class CopiedAssets {
public:
    CopiedAssets() : root_{fs::temp_directory_path() / unique_name()} {
        fs::create_directories(root_);
        fs::copy(fs::path{BARWRIGHT_ASSETS} / "catalogue", root_ / "catalogue");
    }
    ~CopiedAssets() {
        std::error_code ignored;
        fs::remove_all(root_, ignored);
    }
    CopiedAssets(const CopiedAssets&) = delete;
    CopiedAssets& operator=(const CopiedAssets&) = delete;

    const fs::path& root() const { return root_; }

    void replace(const std::string& table, const std::string& before, const std::string& after) {
        const auto path = root_ / "catalogue" / (table + ".csv");
        std::ostringstream read;
        read << std::ifstream{path, std::ios::binary}.rdbuf();
        auto text = read.str();
        const auto at = text.find(before);
        REQUIRE(at != std::string::npos);
        text.replace(at, before.size(), after);
        std::ofstream{path, std::ios::binary} << text;
    }

private:
    static std::string unique_name() {
        static int count = 0;
        return "barwright_catalogue_" + std::to_string(::getpid()) + "_" + std::to_string(++count);
    }

    fs::path root_;
};

engine::Error error_of(const CopiedAssets& assets) {
    const auto loaded = model::load_catalogue(assets.root());
    REQUIRE_FALSE(loaded);
    return loaded.error();
}

template <class T>
void check_sources(const std::vector<T>& rows) {
    REQUIRE_FALSE(rows.empty());
    for (const auto& row : rows) CHECK_FALSE(row.source.empty());
}

}  // namespace

TEST_CASE("every row of the catalogue says where it comes from", "[model][catalogue]") {
    const auto& catalogue = shipped_catalogue();
    check_sources(catalogue.sections);
    check_sources(catalogue.alloys);
    check_sources(catalogue.drills);
    check_sources(catalogue.rivets);
    check_sources(catalogue.screws);
    check_sources(catalogue.rivet_nuts);
    check_sources(catalogue.pins);
    check_sources(catalogue.layout_rules);
    check_sources(catalogue.drilling_speeds);
    check_sources(catalogue.sheet_materials);
    check_sources(catalogue.vent_covers);
    for (const auto& rivet : catalogue.rivets) check_sources(rivet.grips);
}

TEST_CASE("a cover that lets no air pass is an error", "[model][catalogue]") {
    CopiedAssets assets;
    assets.replace("vent_covers", "wood louvre,0.25", "wood louvre,0");
    CHECK(error_of(assets).message.find("above 0, at most 1") != std::string::npos);
}

TEST_CASE("the common stock of a cabinet maker is in the catalogue", "[model][catalogue]") {
    const auto id = GENERATE(
        as<std::string>{}, "angle 3/4 x 3/4 x 1/8", "angle 1 x 1 x 1/8", "angle 1 x 1 x 1/16",
        "angle 1 1/4 x 1 1/4 x 1/8", "angle 1 1/2 x 1 1/2 x 1/8", "angle 2 x 2 x 1/8 rounded",
        "angle 30 x 30 x 3 mm", "angle 25 x 25 x 3 mm", "flat 3/4 x 1/8", "flat 1 x 1/8",
        "flat 1 1/2 x 1/8", "flat 40 x 3 mm", "channel 2 x 1 x 1/8", "tube 1 x 1 x 1/8");
    CAPTURE(id);
    CHECK(model::find_section(shipped_catalogue(), id) != nullptr);
}

TEST_CASE("the sizes of a section are exact", "[model][catalogue]") {
    const auto* angle = model::find_section(shipped_catalogue(), "angle 1 1/4 x 1 1/4 x 1/8");
    REQUIRE(angle != nullptr);
    CHECK(angle->a == 80_in_64);
    CHECK(angle->b == 80_in_64);
    CHECK(angle->thickness == 8_in_64);
    const auto* metric = model::find_section(shipped_catalogue(), "angle 30 x 30 x 3 mm");
    REQUIRE(metric != nullptr);
    CHECK(metric->a == 30_mm);
    CHECK(metric->thickness == 3_mm);
}

TEST_CASE("a section's id begins with its form and says its sizes", "[model][catalogue]") {
    const std::string forms[] = {"angle ", "flat ", "channel ", "tube "};
    for (const auto& section : shipped_catalogue().sections) {
        CAPTURE(section.id);
        CHECK(section.id.rfind(forms[static_cast<std::size_t>(section.form)], 0) == 0);
        const bool ends_in_mm = section.id.find(" mm") != std::string::npos;
        CHECK(ends_in_mm == (section.system == model::MeasureSystem::metric));
        const bool rounded = section.id.find(" rounded") != std::string::npos;
        CHECK(rounded == (section.root_radius > engine::Length{}));
    }
}

TEST_CASE("every section's usual alloy is in the catalogue", "[model][catalogue]") {
    for (const auto& section : shipped_catalogue().sections) {
        CAPTURE(section.id, section.usual_alloy);
        CHECK(model::find_alloy(shipped_catalogue(), section.usual_alloy) != nullptr);
    }
}

TEST_CASE("every drill that a fastener names can be found", "[model][catalogue]") {
    const auto& catalogue = shipped_catalogue();
    const auto is_there = [&](const std::string& name) {
        CAPTURE(name);
        CHECK(model::find_drill(catalogue, name) != nullptr);
    };
    for (const auto& rivet : catalogue.rivets) is_there(rivet.drill);
    for (const auto& pin : catalogue.pins) is_there(pin.drill);
    for (const auto& screw : catalogue.screws) {
        for (const auto& name :
             {screw.tap_drill, screw.clearance_drill, screw.free_drill, screw.loose_drill}) {
            is_there(name);
        }
    }
}

TEST_CASE("a screw's tap drill is smaller than the screw and its clearance drills are larger",
          "[model][catalogue]") {
    const auto& catalogue = shipped_catalogue();
    for (const auto& screw : catalogue.screws) {
        CAPTURE(screw.id);
        CHECK(model::find_drill(catalogue, screw.tap_drill)->diameter < screw.diameter);
        const auto close = model::find_drill(catalogue, screw.clearance_drill)->diameter;
        const auto free = model::find_drill(catalogue, screw.free_drill)->diameter;
        const auto loose = model::find_drill(catalogue, screw.loose_drill)->diameter;
        CHECK(screw.diameter < close);
        CHECK(close < free);
        CHECK(free < loose);
        CHECK(screw.head_diameter_most > loose);
    }
}

// The hole's least size is met by what a drill cuts in practice, up to 0.003 in over its own size.
TEST_CASE("a rivet's drill cuts a hole within the rivet's limits", "[model][catalogue]") {
    const auto oversize = engine::Length::from_nm(76'200);
    const auto& catalogue = shipped_catalogue();
    for (const auto& rivet : catalogue.rivets) {
        CAPTURE(rivet.id);
        const auto drill = model::find_drill(catalogue, rivet.drill)->diameter;
        CHECK(drill + oversize >= rivet.hole_least);
        CHECK(drill <= rivet.hole_most);
        CHECK(rivet.body_diameter_most <= rivet.hole_most);
        CHECK(rivet.head_diameter_most > rivet.hole_most);
    }
}

TEST_CASE("drill names are unique and each has a series of the trade", "[model][catalogue]") {
    const std::set<std::string> series = {"number", "letter", "fraction", "metric"};
    std::set<std::string> names;
    for (const auto& drill : shipped_catalogue().drills) {
        CAPTURE(drill.name);
        CHECK(names.insert(drill.name).second);
        CHECK(series.count(drill.series) == 1);
    }
}

TEST_CASE("a wrong length is told with file, line and column", "[model][catalogue]") {
    CopiedAssets assets;
    assets.replace("drills", "#30,number,0.1285", "#30,number,thick");
    const auto error = error_of(assets);
    CHECK(error.code == engine::ErrorCode::bad_file);
    CHECK_THAT(error.where, Catch::Contains("catalogue/drills.csv line "));
    CHECK_THAT(error.where, Catch::Contains("column diameter"));
    CHECK_THAT(error.message, Catch::Contains("'thick'"));
}

TEST_CASE("the line that is told is the line in the file", "[model][catalogue]") {
    CopiedAssets assets;
    assets.replace("sections", "angle 1/2 x 1/2 x 1/8,angle,inch",
                   "angle 1/2 x 1/2 x 1/8,bar,inch");
    CHECK_THAT(error_of(assets).where, Catch::Contains("catalogue/sections.csv line 3,"));
}

TEST_CASE("a row without a source is refused", "[model][catalogue]") {
    CopiedAssets assets;
    assets.replace("sheet_pins", "less common size; from memory: ask the seller", "");
    CHECK_THAT(error_of(assets).where, Catch::Contains("sheet_pins.csv line 8, column source"));
}

TEST_CASE("two rows of one name are refused, naming both lines", "[model][catalogue]") {
    CopiedAssets assets;
    assets.replace("sheet_pins", "sheet pin 3/32", "sheet pin 1/16");
    const auto error = error_of(assets);
    CHECK_THAT(error.where, Catch::Contains("sheet_pins.csv line 3"));
    CHECK_THAT(error.message, Catch::Contains("line 2"));
}

TEST_CASE("a rivet with an unknown drill is refused", "[model][catalogue]") {
    CopiedAssets assets;
    assets.replace("blind_rivets", ",#30,", ",#130,");
    CHECK_THAT(error_of(assets).message, Catch::Contains("no drill '#130'"));
}

TEST_CASE("a grip of an unknown rivet is refused", "[model][catalogue]") {
    CopiedAssets assets;
    assets.replace("blind_rivet_grips", "blind rivet 3/32,3-2", "blind rivet 3/31,3-2");
    CHECK_THAT(error_of(assets).where, Catch::Contains("blind_rivet_grips.csv line 2"));
}

TEST_CASE("a table without a needed column is refused", "[model][catalogue]") {
    CopiedAssets assets;
    assets.replace("alloys", "yield_mpa", "strength");
    CHECK_THAT(error_of(assets).where, Catch::Contains("alloys.csv line 2, column yield_mpa"));
}

TEST_CASE("a section whose walls leave no room is refused", "[model][catalogue]") {
    CopiedAssets assets;
    assets.replace("sections", "tube,inch,1,1,0.065", "tube,inch,1,1,1/2");
    CHECK_THAT(error_of(assets).message, Catch::Contains("leave no room"));
}

TEST_CASE("a rule whose least is more than its most is refused", "[model][catalogue]") {
    CopiedAssets assets;
    assets.replace("layout_rules", "pitch,3,4,6,8", "pitch,3,4,6,5");
    CHECK_THAT(error_of(assets).message, Catch::Contains("do not rise"));
}

TEST_CASE("a missing table is told by its name", "[model][catalogue]") {
    CopiedAssets assets;
    fs::remove(assets.root() / "catalogue" / "alloys.csv");
    CHECK_THAT(error_of(assets).where, Catch::Contains("catalogue/alloys.csv"));
}
