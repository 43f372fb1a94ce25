#include "engine/files/json_text.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

using engine::read_json;

TEST_CASE("JSON becomes a tree", "[files][json]") {
    const auto tree = read_json(R"({"a": [1, -2, 2.5, true, null, "x"], "b": {}})");
    REQUIRE(tree);
    CHECK((*tree)["a"].size() == 6);
    CHECK((*tree)["b"].is_object());
}

TEST_CASE("a fault in JSON has line and column, counted in characters", "[files][json]") {
    const auto tree = read_json("{\n \"ø½\": x}");
    REQUIRE_FALSE(tree);
    CHECK(tree.error().where == "line 2, column 8");
}

TEST_CASE("a key given twice has its place", "[files][json]") {
    const auto tree = read_json(R"([{}, [1, {"a/b": {"c": 1, "c": 2}}]])");
    REQUIRE_FALSE(tree);
    CHECK(tree.error().where == "/1/1/a~1b/c");
}

TEST_CASE("the same key in two objects is no fault", "[files][json]") {
    CHECK(read_json(R"([{"a": 1}, {"a": {"a": 2}}])").has_value());
}

TEST_CASE("limits of size, depth and count are kept to the last one", "[files][json]") {
    CHECK(read_json("[1,2]", {.most_bytes = 5}).has_value());
    CHECK_FALSE(read_json("[1, 2]", {.most_bytes = 5}).has_value());
    CHECK(read_json("[[1]]", {.deepest = 2}).has_value());
    CHECK_FALSE(read_json("[[[]]]", {.deepest = 2}).has_value());
    CHECK(read_json("[1,2]", {.most_values = 3}).has_value());
    CHECK_FALSE(read_json("[1,2,3]", {.most_values = 3}).has_value());
}

TEST_CASE("quoting escapes what JSON wants escaped", "[files][json]") {
    CHECK(engine::json_quoted("a \"b\"\n\\ ½") == R"("a \"b\"\n\\ ½")");
    CHECK(engine::json_quoted("\xff") == "\"\xef\xbf\xbd\"");
}

TEST_CASE("UTF-8 is told from other bytes", "[files][json]") {
    CHECK(engine::is_utf8("18 3/8"));
    CHECK(engine::is_utf8("½ ø"));
    CHECK_FALSE(engine::is_utf8("\xc3\x28"));
    CHECK_FALSE(engine::is_utf8("\xed\xa0\x80"));
}

TEST_CASE("long texts are cut between characters", "[files][json]") {
    CHECK(engine::in_short("abc", 3) == "abc");
    CHECK(engine::in_short("abcd", 3) == "abc...");
    CHECK(engine::in_short("a½½", 2) == "a...");
}
