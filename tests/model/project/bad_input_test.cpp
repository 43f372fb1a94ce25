// Whatever a file holds: a clear error that says where, never a crash, a hang or a silent loss.
#include "model/project/project_json.h"

#include "tests/model/project/full_project.h"
#include "tests/model/project/sample_files.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

using Catch::Matchers::Contains;
using Catch::Matchers::StartsWith;
using engine::ErrorCode;
using model::read_project_json;
using model::to_json_text;
using nlohmann::json;
using Pointer = json::json_pointer;

namespace {

engine::Error error_of(std::string_view text) {
    const auto result = read_project_json(text);
    REQUIRE_FALSE(result.has_value());
    CHECK_FALSE(result.error().message.empty());
    CHECK(result.error().message.size() < 2000);
    return result.error();
}

// A project whose name is given as JSON.
std::string named(std::string_view name) {
    return R"({"barwright": 1, "name": )" + std::string(name) + "}";
}

void list_pointers(const json& value, const Pointer& at, std::vector<Pointer>& pointers) {
    pointers.push_back(at);
    if (value.is_object()) {
        for (const auto& [key, inner] : value.items()) list_pointers(inner, at / key, pointers);
    } else if (value.is_array()) {
        for (std::size_t i = 0; i < value.size(); ++i) list_pointers(value[i], at / i, pointers);
    }
}

struct Whole {
    json tree = json::parse(to_json_text(model_tests::full_project()));
    std::vector<Pointer> pointers;

    Whole() {
        list_pointers(tree, Pointer{}, pointers);
        pointers.erase(pointers.begin());  // the whole itself
    }
};

bool is_same_type(const json& a, const json& b) {
    return a.type() == b.type() || (a.is_number() && b.is_number());
}

}  // namespace

TEST_CASE("a project cut off anywhere is refused with line and column", "[model][bad input]") {
    for (const std::string& name : model_tests::sample_names()) {
        const std::string text = model_tests::sample_text(name);
        for (std::size_t size = 0; size + 2 < text.size(); size += 97) {
            CAPTURE(name, size);
            const auto error = error_of(std::string_view(text).substr(0, size));
            CHECK(error.code == ErrorCode::bad_file);
            CHECK_THAT(error.where, StartsWith("line "));
        }
    }
}

TEST_CASE("a value of the wrong type is refused where it stands", "[model][bad input]") {
    const Whole whole;
    const std::array wrong{
        json(nullptr), json(true),    json(12),       json(-7.5),
        json("text"),  json::array(), json::object(), json::array({json::array()})};
    for (const Pointer& at : whole.pointers) {
        for (const json& value : wrong) {
            if (is_same_type(whole.tree[at], value)) continue;
            json spoilt = whole.tree;
            spoilt[at] = value;
            CAPTURE(at.to_string(), value.dump());
            CHECK_THAT(error_of(spoilt.dump()).where, StartsWith(at.to_string()));
        }
    }
}

TEST_CASE("a value of the right type and no sense is refused or kept", "[model][bad input]") {
    const Whole whole;
    const std::array odd{json(""),
                         json("\x01\x7f"),
                         json(-1),
                         json(3.25),
                         json(1e300),
                         json(std::numeric_limits<std::int64_t>::min()),
                         json(std::numeric_limits<std::uint64_t>::max()),
                         json::array(),
                         json::object()};
    for (const Pointer& at : whole.pointers) {
        for (const json& value : odd) {
            if (!is_same_type(whole.tree[at], value)) continue;
            json spoilt = whole.tree;
            spoilt[at] = value;
            CAPTURE(at.to_string(), value.dump());
            const auto result = read_project_json(spoilt.dump());
            if (result) {
                const auto again = read_project_json(to_json_text(*result));
                REQUIRE(again);
                CHECK(*again == *result);
            } else {
                CHECK_THAT(result.error().where, StartsWith(at.to_string()));
            }
        }
    }
}

TEST_CASE("a field that is missing has its default or is named", "[model][bad input]") {
    const Whole whole;
    for (const Pointer& at : whole.pointers) {
        json spoilt = whole.tree;
        json& parent = spoilt[at.parent_pointer()];
        if (!parent.is_object()) continue;
        parent.erase(at.back());
        CAPTURE(at.to_string());
        if (const auto result = read_project_json(spoilt.dump()); !result) {
            CHECK(result.error().where == at.parent_pointer().to_string());
            CHECK_THAT(result.error().message, Contains("\"" + at.back() + "\""));
        }
    }
}

TEST_CASE("an unknown field is refused in every object", "[model][bad input]") {
    const Whole whole;
    std::vector<Pointer> objects{Pointer{}};
    for (const Pointer& at : whole.pointers) {
        if (whole.tree[at].is_object()) objects.push_back(at);
    }
    for (const Pointer& at : objects) {
        json spoilt = whole.tree;
        spoilt[at]["co/lour"] = 1;
        CHECK(error_of(spoilt.dump()).where == at.to_string() + "/co~1lour");
    }
}

TEST_CASE("deep nesting is refused and not followed", "[model][bad input]") {
    constexpr std::size_t deep = 10'000;
    const std::string lists(deep, '[');
    std::string objects;
    for (std::size_t i = 0; i < deep; ++i) objects += "{\"a\":";
    for (const std::string& text :
         {lists, lists + std::string(deep, ']'), objects, objects + "1" + std::string(deep, '}'),
          named(lists + std::string(deep, ']'))}) {
        CHECK_THAT(error_of(text).message, Contains("inside one another"));
    }
}

TEST_CASE("a file of a hundred megabytes is refused at once", "[model][bad input]") {
    CHECK_THAT(error_of(std::string(100'000'000, ' ')).message, Contains("larger than 64 MiB"));
}

TEST_CASE("a file of millions of values is refused", "[model][bad input]") {
    std::string text = named("\"a\"");
    text.back() = ',';
    text += "\"frames\": [";
    for (int i = 0; i < 5'000'000; ++i) text += "0,";
    CHECK_THAT(error_of(text).message, Contains("more than 4000000 values"));
}

TEST_CASE("numbers too large for any double are refused", "[model][bad input]") {
    const auto error = error_of(R"({"barwright": 1, "name": "a", "shop": {"pitch": 1e999}})");
    CHECK(error.where == "line 1, column 53");
    CHECK(error.message == "a number is too large");
    CHECK(error_of(R"({"barwright": 1, "name": "a", "shop": {"pitch": )" +
                   std::string(1'000'000, '9') + "}}")
              .message == "a number is too large");
    CHECK(error_of(R"({"barwright": 1, "name": "a", "shop": {"per_lap": 1e300}})").where ==
          "/shop/per_lap");
    CHECK(error_of(R"({"barwright": 100000000000000000000})").code == ErrorCode::newer_version);
}

TEST_CASE("what is not a number is not JSON", "[model][bad input]") {
    for (const std::string_view text : {"NaN", "Infinity", "-Infinity", "0x10", "01", "+1", ".5"}) {
        CAPTURE(text);
        const auto error = error_of(R"({"barwright": 1, "name": "a", "shop": {"pitch": )" +
                                    std::string(text) + "}}");
        CHECK_THAT(error.message, StartsWith("not JSON"));
    }
}

TEST_CASE("text that is not UTF-8 is refused", "[model][bad input]") {
    for (const std::string_view bytes : {"\xff", "\xc3\x28", "\xed\xa0\x80", "\xf8\x88\x80\x80\x80",
                                         "\\ud800", "\\udc00\\ud800"}) {
        CHECK(error_of(named("\"" + std::string(bytes) + "\"")).code == ErrorCode::bad_file);
    }
}

TEST_CASE("a key given twice is refused at any depth", "[model][bad input]") {
    CHECK(error_of(R"({"barwright": 1, "name": "a", "name": "a"})").where == "/name");
    CHECK(error_of(R"({"barwright": 1, "name": "a", "frames": [{"name": "f"}, {"name": "f",
        "planes": [{"name": "left", "axis": "x", "axis": "y", "position": "0"}]}]})")
              .where == "/frames/1/planes/0/axis");
}

TEST_CASE("files that are something else are refused", "[model][bad input]") {
    using namespace std::string_view_literals;
    for (const std::string_view text :
         {""sv, " \n\t "sv, "\0\0\0\0"sv, "\x89PNG\r\n\x1a\n\0\0\0\rIHDR"sv, "PK\x03\x04\x14\0"sv,
          "\xef\xbb\xbf"sv, "\xff\xfe{\0}\0"sv, "<svg/>"sv, "name = \"a\""sv}) {
        CHECK_THAT(error_of(text).message, StartsWith("not JSON"));
    }
    CHECK_THAT(error_of("null").message, Contains("expected a Barwright project"));
    CHECK_THAT(error_of(named("\"a\"") + "x").message, StartsWith("not JSON"));
}

TEST_CASE("a byte order mark does no harm", "[model][bad input]") {
    CHECK(read_project_json("\xef\xbb\xbf" + named("\"a\"")).has_value());
}

TEST_CASE("an error stays short however long the fault is", "[model][bad input]") {
    const std::string length(1'000'000, 'x');
    const auto unknown = error_of("{\"barwright\": 1, \"" + length + "\": 1}");
    CHECK(unknown.where.size() < 200);
    error_of(R"({"barwright": 1, "name": "a", "frames": ")" + length + "\"}");
    error_of("{\"barwright\": 1, \"name\": " + length);
    error_of("{\"barwright\": \"" + length + "\"}");
    error_of("{\"a" + length + "\": 1, \"a" + length + "\": 1}");
}
