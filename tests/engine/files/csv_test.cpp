#include "engine/files/csv.h"

#include <catch2/catch.hpp>

#include <array>
#include <random>

using namespace engine;

namespace {

CsvTable table_of(std::string_view text) {
    const auto table = read_csv(text);
    INFO(text);
    if (!table) FAIL(to_text(table.error()));
    return *table;
}

std::string refused_at(std::string_view text) {
    const auto table = read_csv(text);
    INFO(text);
    if (table) FAIL("was read");
    CHECK(table.error().code == ErrorCode::bad_file);
    return table.error().where;
}

std::string any_field(std::mt19937& random) {
    static const std::array<std::string, 12> parts{"a",  "3/8", ",",    "\"", "\r\n",   "\n",
                                                   "\r", " ",   "\"\"", "18", "\u00E9", "'"};
    std::string field;
    for (auto left = random() % 6; left > 0; --left) field += parts[random() % parts.size()];
    return field;
}

bool would_be_guarded(const std::string& field) {
    return !field.empty() && std::string_view{"=+-@\t\r"}.find(field[0]) != std::string_view::npos;
}

}  // namespace

TEST_CASE("fields with commas, quotes or line breaks are quoted", "[engine][csv]") {
    const CsvTable table{{"mark", "note"}, {{"A1", "3/8, both"}, {"A2", "1\""}, {"A3", "a\r\nb"}}};
    CHECK(to_csv(table) == "mark,note\r\nA1,\"3/8, both\"\r\nA2,\"1\"\"\"\r\nA3,\"a\r\nb\"\r\n");
}

TEST_CASE("what a spreadsheet would take for a formula gets an apostrophe", "[engine][csv]") {
    const CsvTable table{{"text"}, {{"=1+1"}, {"@a"}, {"-x"}, {"+"}, {"-18.5"}, {"+3"}}};
    CHECK(to_csv(table) == "text\r\n\"'=1+1\"\r\n\"'@a\"\r\n\"'-x\"\r\n\"'+\"\r\n-18.5\r\n+3\r\n");
}

TEST_CASE("lines may end in CRLF or LF and the last one in nothing", "[engine][csv]") {
    const CsvTable expected{{"a", "b"}, {{"1", "2"}}};
    CHECK(table_of("a,b\r\n1,2\r\n") == expected);
    CHECK(table_of("a,b\n1,2\n") == expected);
    CHECK(table_of("a,b\n1,2") == expected);
    CHECK(table_of("\xEF\xBB\xBF"
                   "a,b\n1,2") == expected);
}

TEST_CASE("quoted fields keep commas, quotes and line breaks", "[engine][csv]") {
    CHECK(table_of("a,b\n\"1,5\",\"say \"\"in\"\"\"\n").rows[0] == CsvRow{"1,5", "say \"in\""});
    CHECK(table_of("a,b\n\"1\n2\r\n3\",\n").rows[0] == CsvRow{"1\n2\r\n3", ""});
    CHECK(table_of("\"a\",\"\"\n").header == CsvRow{"a", ""});
}

TEST_CASE("quotes and carriage returns inside a plain field are kept", "[engine][csv]") {
    CHECK(table_of("a\n1' 6\"\n").rows[0] == CsvRow{"1' 6\""});
    CHECK(table_of("a\nb\rc\n").rows[0] == CsvRow{"b\rc"});
}

TEST_CASE("an empty line is a row of one empty field", "[engine][csv]") {
    CHECK(table_of("a\n\nb\n").rows == std::vector<CsvRow>{{""}, {"b"}});
    CHECK(refused_at("a,b\n\n1,2\n") == "line 2");
}

TEST_CASE("a table that cannot be read tells the line", "[engine][csv]") {
    CHECK(refused_at("") == "line 1");
    CHECK(refused_at("\xEF\xBB\xBF") == "line 1");
    CHECK(refused_at("a,b\n1\n") == "line 2");
    CHECK(refused_at("a,b\n1,2\n1,2,3\n") == "line 3");
    CHECK(refused_at("a,b\n\"1\n2\",3\n4\n") == "line 4");
    CHECK(refused_at("a,b\n1,\"2\n\n\n") == "line 2");
    CHECK(refused_at("a,b\n\"1\"x,2\n") == "line 2");
    CHECK(refused_at("a,b\n\"1\"\r2,3\n") == "line 2");
}

TEST_CASE("a table that was written reads as the same table", "[engine][csv][property]") {
    const auto seed = GENERATE(range(1U, 21U));
    CAPTURE(seed);
    std::mt19937 random{seed};
    for (int i = 0; i < 100; ++i) {
        const std::size_t width = 1 + random() % 4;
        CsvTable table;
        const auto fill = [&](CsvRow& row) {
            while (row.size() < width) {
                auto field = any_field(random);
                row.push_back(would_be_guarded(field) ? "x" + field : field);
            }
        };
        fill(table.header);
        for (auto left = random() % 5; left > 0; --left) fill(table.rows.emplace_back());
        const auto text = to_csv(table);
        CAPTURE(text);
        REQUIRE(table_of(text) == table);
    }
}

TEST_CASE("a hundred thousand rows are read at once", "[engine][csv]") {
    std::string text = "a,b,c\n";
    for (int i = 0; i < 100'000; ++i) text += "18 3/8,\"x\"\"y\",\n";
    CHECK(table_of(text).rows.size() == 100'000);
}
