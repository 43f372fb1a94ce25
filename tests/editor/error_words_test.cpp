#include "editor/error_words.h"

#include <catch2/catch.hpp>

using editor::error_words;
using engine::Error;
using engine::ErrorCode;

TEST_CASE("a fault at the start of what was typed is told without a place", "[editor][words]") {
    const Error error{ErrorCode::invalid_text, "column 1", "a number is needed here"};
    CHECK(error_words(error, "?") == "a number is needed here");
}

TEST_CASE("a fault further on is told by what stands before it", "[editor][words]") {
    const Error error{ErrorCode::invalid_text, "dimension width, column 9", "a number is needed"};
    CHECK(error_words(error, "24 in + ?") == "behind `24 in + `: a number is needed");
}

TEST_CASE("a column counts characters, not bytes", "[editor][words]") {
    const Error error{ErrorCode::invalid_text, "column 4", "a number is needed"};
    CHECK(error_words(error, "6\xC2\xBC+?") == "behind `6\xC2\xBC+`: a number is needed");
}

TEST_CASE("a place that is no column is kept", "[editor][words]") {
    const Error error{ErrorCode::unknown_name, "frame box", "there is no such stock"};
    CHECK(error_words(error, "x") == "frame box: there is no such stock");
}
