#include "model/schedule/export.h"

#include "model/resolve/piece_solid.h"
#include "model/schedule/step_text.h"

#include "tests/model/schedule/small_job.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <cmath>
#include <cstring>
#include <regex>
#include <set>

namespace {

using model::ExportFormat;

std::string bytes_of(ExportFormat format) {
    const auto job = tests::small_job();
    const auto made = model::exported(job.project, job.catalogue, job.resolved, format);
    REQUIRE(made);
    return *made;
}

std::size_t count_of(const std::string& text, const std::string& word) {
    std::size_t count = 0;
    for (auto at = text.find(word); at != std::string::npos; at = text.find(word, at + 1)) ++count;
    return count;
}

std::uint32_t u32_at(const std::string& bytes, std::size_t at) {
    std::uint32_t value = 0;
    for (unsigned i = 0; i < 4; ++i)
        value |= static_cast<std::uint32_t>(static_cast<unsigned char>(bytes[at + i])) << (8U * i);
    return value;
}

float float_at(const std::string& bytes, std::size_t at) {
    const auto bits = u32_at(bytes, at);
    float value = 0.0F;
    std::memcpy(&value, &bits, sizeof value);
    return value;
}

nlohmann::json tree_of_glb(const std::string& glb) {
    return nlohmann::json::parse(glb.substr(20, u32_at(glb, 12)));
}

}  // namespace

TEST_CASE("a file's ending tells its format, in small or capital letters", "[model][export]") {
    CHECK(model::export_format(".step") == ExportFormat::step);
    CHECK(model::export_format(".STP") == ExportFormat::step);
    CHECK(model::export_format(".Glb") == ExportFormat::glb);
    CHECK(model::export_format(".stl") == ExportFormat::stl);
    CHECK(model::export_format(".obj") == ExportFormat::obj);
    CHECK_FALSE(model::export_format(".json"));
    CHECK_FALSE(model::export_format(""));
}

TEST_CASE("a project without pieces has nothing to export, and says so", "[model][export]") {
    const auto job = tests::small_job();
    for (const auto format :
         {ExportFormat::step, ExportFormat::glb, ExportFormat::stl, ExportFormat::obj}) {
        const auto made = model::exported(job.project, job.catalogue, {}, format);
        REQUIRE_FALSE(made);
        CHECK_THAT(made.error().message, Catch::Contains("no piece"));
    }
}

TEST_CASE("the same project gives the same bytes", "[model][export]") {
    for (const auto format :
         {ExportFormat::step, ExportFormat::glb, ExportFormat::stl, ExportFormat::obj})
        CHECK(bytes_of(format) == bytes_of(format));
}

TEST_CASE("STEP holds one named, placed product for each piece, and one for the whole",
          "[model][export]") {
    const auto job = tests::small_job();
    const auto step = bytes_of(ExportFormat::step);
    const auto pieces = job.resolved.pieces.size();
    CHECK(count_of(step, "=PRODUCT(") == pieces + 1);
    CHECK(count_of(step, "=MANIFOLD_SOLID_BREP(") == pieces);
    CHECK(count_of(step, "=NEXT_ASSEMBLY_USAGE_OCCURRENCE(") == pieces);
    CHECK(count_of(step, "=ITEM_DEFINED_TRANSFORMATION(") == pieces);
    const auto& mark = job.resolved.marks[job.resolved.pieces[1].mark].name;
    CHECK_THAT(step, Catch::Contains("=PRODUCT('" + mark + " post right'"));
    CHECK_THAT(step, Catch::StartsWith("ISO-10303-21;") && Catch::EndsWith("END-ISO-10303-21;\n") &&
                         Catch::Contains("AUTOMOTIVE_DESIGN"));
}

// A reader that meets "400" for a real, or a misspelt entity, says that all is well and takes no
// solid from the file.
TEST_CASE("STEP writes every real with a point and its placements by their right name",
          "[model][export]") {
    const auto step = bytes_of(ExportFormat::step);
    CHECK(count_of(step, "=AXIS2_PLACEMENT_3D(") > 0);
    const std::regex coordinates{R"((CARTESIAN_POINT|DIRECTION)\('',\(([^)]*)\)\))"};
    const std::regex real{R"(-?\d+\.\d*(E[+-]?\d+)?(,|$))"};
    std::size_t checked = 0;
    for (std::sregex_iterator at{step.begin(), step.end(), coordinates}, end; at != end; ++at) {
        const std::string triple = (*at)[2];
        CHECK(std::distance(std::sregex_iterator{triple.begin(), triple.end(), real}, {}) == 3);
        if (++checked == 500) break;
    }
    CHECK(checked > 100);
}

// Readers mend a face that looks the wrong way without a word, so it is read here.
TEST_CASE("STEP has the walls of holes look towards their axis", "[model][export]") {
    const auto job = tests::small_job();
    const auto step = bytes_of(ExportFormat::step);
    const std::regex cylinder{R"(#(\d+)=CYLINDRICAL_SURFACE)"};
    const std::regex face{R"(=ADVANCED_FACE\('',\([^)]*\),#(\d+),\.([TF])\.\))"};
    std::set<std::string> cylinders;
    for (std::sregex_iterator at{step.begin(), step.end(), cylinder}, end; at != end; ++at)
        cylinders.insert((*at)[1]);
    model::PieceSolids solids{job.resolved, job.catalogue};
    model::PieceSolid made;
    std::size_t holes = 0;
    for (model::Index i = 0; i < job.resolved.pieces.size(); ++i) {
        REQUIRE(solids.make(made, i));
        holes += made.solid.hole_count;
    }
    CHECK(cylinders.size() == holes);
    std::size_t flat = 0;
    std::size_t hollow = 0;
    for (std::sregex_iterator at{step.begin(), step.end(), face}, end; at != end; ++at) {
        const bool is_round = cylinders.contains((*at)[1]);
        CHECK((*at)[2] == (is_round ? "F" : "T"));
        ++(is_round ? hollow : flat);
    }
    CHECK(hollow == cylinders.size());
    CHECK(flat > 0);
}

TEST_CASE("STEP texts and numbers are written as the standard asks", "[model][export]") {
    std::string out;
    model::StepText step{out};
    step.text("it's a \\ post \xC3\xA9 \xF0\x9F\x94\xA7").raw(" ");
    step.real(400.0).raw(" ").real(-0.0).raw(" ").real(1e-7).raw(" ").real(1e30).raw(" ").real(0.5);
    CHECK(out ==
          "'it''s a \\\\ post \\X2\\00E9\\X0\\ \\X4\\0001F527\\X0\\' 400. 0. 1.E-07 1.E+30 0.5");
}

TEST_CASE("GLB is whole: its lengths fit, and each piece is a named node with its bounds",
          "[model][export]") {
    const auto job = tests::small_job();
    const auto glb = bytes_of(ExportFormat::glb);
    CHECK(glb.substr(0, 4) == "glTF");
    CHECK(u32_at(glb, 4) == 2);
    CHECK(u32_at(glb, 8) == glb.size());
    const auto tree = tree_of_glb(glb);
    CHECK(20 + u32_at(glb, 12) + 8 + tree["buffers"][0]["byteLength"].get<std::size_t>() ==
          glb.size());
    CHECK(tree["nodes"].size() == job.resolved.pieces.size() + 1);
    CHECK_THAT(tree["nodes"][2]["name"].get<std::string>(), Catch::EndsWith("post right"));
    const auto& position = tree["accessors"][0];
    CHECK(position["min"][2] < position["max"][2]);
}

TEST_CASE("STL counts its triangles, and they look outwards", "[model][export]") {
    const auto stl = bytes_of(ExportFormat::stl);
    REQUIRE(stl.size() > 84);
    const auto count = u32_at(stl, 80);
    REQUIRE(stl.size() == 84 + std::size_t{50} * count);
    CHECK(stl.substr(0, 5) != "solid");
    double six_times = 0.0;
    for (std::uint32_t i = 0; i < count; ++i) {
        std::array<std::array<double, 3>, 3> p{};
        for (std::size_t k = 0; k < 9; ++k)
            p[k / 3][k % 3] =
                static_cast<double>(float_at(stl, 84 + std::size_t{50} * i + 12 + 4 * k));
        for (std::size_t k = 0; k < 3; ++k)
            six_times += p[0][k] * (p[1][(k + 1) % 3] * p[2][(k + 2) % 3] -
                                    p[1][(k + 2) % 3] * p[2][(k + 1) % 3]);
    }
    CHECK(six_times > 0.0);
}

TEST_CASE("OBJ has one object for each piece, and its faces refer to what is there",
          "[model][export]") {
    const auto job = tests::small_job();
    const auto obj = bytes_of(ExportFormat::obj);
    CHECK(count_of(obj, "\no ") == job.resolved.pieces.size());
    CHECK(count_of(obj, "\nv ") == count_of(obj, "\nvn "));
    const auto last = obj.rfind(' ');
    CHECK(std::stoul(obj.substr(last + 1)) <= count_of(obj, "\nv "));
}
