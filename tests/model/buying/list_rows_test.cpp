#include "model/buying/list_rows.h"

#include <catch2/catch.hpp>

using model::ListRows;
using model::read_list_rows;
using namespace std::string_literals;  // for a text that holds a character of value 0

namespace {

ListRows rows_of(const std::string& text) {
    const auto rows = read_list_rows(text, {"what", "price"});
    if (!rows) FAIL(engine::to_text(rows.error()));
    return *rows;
}

std::string error_of(const std::string& text) {
    const auto rows = read_list_rows(text, {"what", "price"});
    REQUIRE_FALSE(rows);
    return engine::to_text(rows.error());
}

const std::vector<std::string> bolt_row{"bolt, long", "3,50"};

}  // namespace

TEST_CASE("fields may be parted by commas, semicolons or tabs", "[model][buying][csv]") {
    CHECK(rows_of("what,price\n\"bolt, long\",\"3,50\"\n").rows[0].fields == bolt_row);
    CHECK(rows_of("what;price\nbolt, long;3,50\n").rows[0].fields == bolt_row);
    CHECK(rows_of("what\tprice\nbolt, long\t3,50\n").rows[0].fields == bolt_row);
    CHECK(rows_of("sep=;\nwhat;price\nbolt, long;3,50\n").rows[0].fields == bolt_row);
}

TEST_CASE("a byte order mark and the line ends of any system are taken", "[model][buying][csv]") {
    for (const std::string end : {"\n", "\r\n", "\r"}) {
        const auto rows = rows_of("\xEF\xBB\xBFwhat;price" + end + "bolt, long;3,50" + end);
        REQUIRE(rows.rows.size() == 1);
        CHECK(rows.rows[0].fields == bolt_row);
        CHECK(rows.rows[0].line == 2);
    }
}

TEST_CASE("blank rows, rows of empty fields and comments are passed over, and counted",
          "[model][buying][csv]") {
    const auto rows = rows_of(
        "# kept by hand, \"so far\n\n\"# quoted, as a spreadsheet does\",\nWhat,Price\n,,,\n"
        "   ,\n#bolt,1\nbolt,2");
    REQUIRE(rows.rows.size() == 1);
    CHECK(rows.rows[0].line == 8);
    CHECK(rows.headings.line == 4);
    CHECK(rows.headings.fields == std::vector<std::string>{"what", "price"});
}

TEST_CASE("line breaks inside a quoted field count as lines", "[model][buying][csv]") {
    const auto rows = rows_of("what,price\n\"two\r\nlines\",1\nbolt,2\n");
    CHECK(rows.rows[0].fields[0] == "two\r\nlines");
    CHECK(rows.rows[1].line == 4);
}

TEST_CASE("a row may lack its last fields, but not have more than there are headings",
          "[model][buying][csv]") {
    CHECK(rows_of("what,price\nbolt\n").rows[0].fields == std::vector<std::string>{"bolt", ""});
    CHECK(rows_of("what,price\nbolt,1,,\n").rows[0].fields ==
          std::vector<std::string>{"bolt", "1"});
    CHECK(error_of("what,price\nbolt,33,50\n").rfind("line 2: 3 fields", 0) == 0);
}

TEST_CASE("what is no such table is refused with its line", "[model][buying][csv]") {
    CHECK(error_of("").rfind("line 1: there is no row of headings", 0) == 0);
    CHECK(error_of("a,b\n1,2\n").rfind("line 1: there is no row of headings", 0) == 0);
    CHECK(error_of("what,price\nbolt,\"1\n\n").rfind("line 2: a quote is opened", 0) == 0);
    CHECK(error_of("what,price\nbolt,1\nnut,\"1\"2\n").rfind("line 3: something", 0) == 0);
    CHECK(error_of("what,price\nb\xE4r,1\n").rfind("line 2, character 2: this is no text", 0) == 0);
    CHECK(error_of("what,price\n\nb\0x,1\n"s).rfind("line 3, character 2", 0) == 0);
    CHECK(error_of("\xFF\xFEw").find("UTF-16") != std::string::npos);
}
