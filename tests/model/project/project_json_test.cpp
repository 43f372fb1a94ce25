#include "model/project/project_json.h"

#include "tests/model/project/full_project.h"

#include <catch2/catch.hpp>

using Catch::Matchers::Contains;
using engine::ErrorCode;
using model::read_project_json;
using model::to_json_text;

namespace {

engine::Error error_of(std::string_view text) {
    const auto result = read_project_json(text);
    REQUIRE_FALSE(result.has_value());
    return result.error();
}

}  // namespace

TEST_CASE("a project with every field in use reads back as it was written", "[model][project]") {
    const model::Project before = model_tests::full_project();
    const auto after = read_project_json(to_json_text(before));
    REQUIRE(after);
    CHECK(*after == before);
}

TEST_CASE("an empty project is two lines of fields", "[model][project]") {
    CHECK(to_json_text({.name = "New"}) == "{\n  \"barwright\": 1,\n  \"name\": \"New\"\n}\n");
}

TEST_CASE("planes stand on one line, members have a line for each field", "[model][project]") {
    const std::string text = to_json_text(model_tests::full_project());
    CHECK_THAT(
        text,
        Contains("        {\"name\": \"right\", \"axis\": \"x\", \"position\": \"width\"},\n"));
    CHECK_THAT(text,
               Contains("          \"run\": \"x\",\n          \"on\": [\"front\", \"top\"],\n"));
}

TEST_CASE("a field left at its default is left out", "[model][project]") {
    const std::string text = to_json_text(model_tests::full_project());
    CHECK(text.find("\"turned\": false") == text.npos);
    CHECK(text.find("\"inset\"") != text.npos);
}

TEST_CASE("an unknown field is refused by name", "[model][project]") {
    const auto error = error_of(
        R"({"barwright": 1, "name": "a", "frames": [{"name": "f", "planes":
            [{"name": "left", "axis": "x", "position": "0", "colour": "red"}]}]})");
    CHECK(error.code == ErrorCode::bad_file);
    CHECK(error.where == "/frames/0/planes/0/colour");
    CHECK(error.message ==
          "a plane has no field \"colour\"; its fields are \"name\", \"axis\" and \"position\"");
}

TEST_CASE("a missing field is named with the thing that needs it", "[model][project]") {
    const auto error =
        error_of(R"({"barwright": 1, "name": "a", "stock": [{"name": "s", "alloy": "x"}]})");
    CHECK(error.where == "/stock/0");
    CHECK(error.message == "a stock needs the field \"section\"");
}

TEST_CASE("a number where a formula belongs is refused with the mend", "[model][project]") {
    const auto error = error_of(
        R"({"barwright": 1, "name": "a", "dimensions": [{"name": "width", "formula": 36}]})");
    CHECK(error.where == "/dimensions/0/formula");
    CHECK(error.message == "expected a formula as text, found the number 36: write \"36\"");
}

TEST_CASE("a wrong word is answered with the right ones", "[model][project]") {
    const auto error = error_of(
        R"({"barwright": 1, "name": "a", "frames": [{"name": "f", "planes":
            [{"name": "left", "axis": "w", "position": "0"}]}]})");
    CHECK(error.where == "/frames/0/planes/0/axis");
    CHECK(error.message == "expected \"x\", \"y\" or \"z\", found \"w\"");
}

TEST_CASE("a later format is told as such, whatever else is in it", "[model][project]") {
    const auto error = error_of(R"({"barwright": 2, "name": "a", "new field": []})");
    CHECK(error.code == ErrorCode::newer_version);
    CHECK_THAT(error.message, Contains("format 2") && Contains("up to format 1"));
}

TEST_CASE("what is no project says so", "[model][project]") {
    CHECK_THAT(error_of("{}").message, Contains("lacks the field \"barwright\""));
    CHECK_THAT(error_of("[]").message, Contains("expected a Barwright project"));
    CHECK(error_of(R"({"barwright": "1"})").where == "/barwright");
    CHECK(error_of(R"({"barwright": 0})").where == "/barwright");
}

TEST_CASE("a key given twice is refused with its place", "[model][project]") {
    const auto error = error_of(
        R"({"barwright": 1, "name": "a", "dimensions": [{"name": "b", "formula": "1"},
            {"name": "c", "formula": "1", "formula": "2"}]})");
    CHECK(error.where == "/dimensions/1/formula");
    CHECK_THAT(error.message, Contains("given twice"));
}

TEST_CASE("a photograph is called no project", "[model][project]") {
    for (const char* text : {"\x89PNG\r\n\x1a\n", "GIF89a", "<html>"}) {
        const auto photograph = model::read_project_json(text);
        REQUIRE_FALSE(photograph);
        CHECK_THAT(photograph.error().message, Contains("this is no project"));
    }
    CHECK_THAT(error_of("{\"a\": }").message, !Contains("no project"));
    CHECK_THAT(error_of("\xEF\xBB\xBF{\"a\": }").message, !Contains("no project"));
    for (const char* text : {"", "\xEF\xBB\xBF", " \n"})
        CHECK_THAT(error_of(text).message, Contains("there is nothing in it"));
}

TEST_CASE("what is not JSON is told with line and column", "[model][project]") {
    const auto error = error_of("{\n  \"barwright\": 1,\n  \"name\": nought\n}\n");
    CHECK(error.where == "line 3, column 12");
    CHECK_THAT(error.message, Contains("not JSON"));
}

TEST_CASE("an obstacle has one shape", "[model][project]") {
    const auto none = error_of(R"({"barwright": 1, "name": "a", "room": [{"name": "b"}]})");
    CHECK(none.where == "/room/0");
    CHECK_THAT(none.message, Contains("needs one of") && Contains("wheel_well"));
    const auto two = error_of(R"({"barwright": 1, "name": "a", "room": [{"name": "b",
        "box": {"least": ["0","0","0"], "most": ["1","1","1"]}, "scan": {"file": "x"}}]})");
    CHECK_THAT(two.message, Contains("has more"));
}

TEST_CASE("numbers outside what can be worked with are refused", "[model][project]") {
    const auto shown = [](std::string_view fields) {
        return error_of(R"({"barwright": 1, "name": "a", "shown": {"form": "inch fraction", )" +
                        std::string(fields) + "}}");
    };
    CHECK(shown(R"("denominator": 0)").where == "/shown/denominator");
    CHECK(shown(R"("denominator": 12)").where == "/shown/denominator");
    CHECK(shown(R"("denominator": 99999999999999999999)").where == "/shown/denominator");
    CHECK(shown(R"("decimals": 8)").where == "/shown/decimals");
    CHECK(shown(R"("decimals": 2.5)").where == "/shown/decimals");
}
