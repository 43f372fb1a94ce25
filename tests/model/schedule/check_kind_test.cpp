#include "model/schedule/check_kind.h"

#include "model/schedule/findings.h"

#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>
#include <regex>
#include <set>
#include <sstream>
#include <string>

namespace {

using namespace model;

std::string text_of(const std::filesystem::path& file) {
    std::ostringstream text;
    text << std::ifstream(file).rdbuf();
    return text.str();
}

// All that the checks of the model are written in, but this list itself.
std::string source_of_checks() {
    std::string all;
    const auto folder = std::filesystem::path(BARWRIGHT_TESTS).parent_path() / "model";
    for (const auto& entry : std::filesystem::recursive_directory_iterator(folder)) {
        const auto& path = entry.path();
        if (path.extension() == ".cpp" && path.stem() != "check_kind") all += text_of(path);
    }
    return all;
}

}  // namespace

TEST_CASE("each kind of check has its row, with words", "[model][schedule][checks]") {
    for (std::size_t i = 0; i < check_rows.size(); ++i) {
        const auto& row = check_rows[i];
        CHECK(static_cast<std::size_t>(row.kind) == i);
        CHECK(&row_of(row.kind) == &row);
        CHECK_FALSE(row.title.empty());
        CHECK(row.checked.ends_with('.'));
        CHECK(row.one != row.many);
    }
}

TEST_CASE("every finding that the model reports belongs to a kind of check",
          "[model][schedule][checks]") {
    const std::string source = source_of_checks();
    REQUIRE(source.size() > 100000);
    const std::regex stated(R"re(code = "([a-z_]+)")re");
    std::set<std::string> codes;
    for (auto at = std::sregex_iterator(source.begin(), source.end(), stated);
         at != std::sregex_iterator(); ++at)
        codes.insert((*at)[1]);
    REQUIRE(codes.size() > 40);
    for (const auto& code : codes) {
        INFO(code);
        CHECK(check_of(code).has_value());
    }
    CHECK_FALSE(check_of("no_such_code").has_value());
    CHECK_FALSE(check_of("").has_value());
}

TEST_CASE("findings are counted under their check, those of no kind under what is stated",
          "[model][schedule][checks]") {
    const auto finding = [](const char* code, Severity severity) {
        return Finding{.code = code, .severity = severity};
    };
    const auto counts = count_by_check(
        {finding("loose_end", Severity::error), finding("loose_end", Severity::error),
         finding("frame_gap", Severity::warning), finding("feet_to_fix", Severity::note),
         finding("never_heard_of", Severity::warning)});
    const auto count = [&](CheckKind kind) { return counts[static_cast<std::size_t>(kind)]; };
    CHECK(count(CheckKind::ends) == CheckCount{2, 0, 0});
    CHECK(count(CheckKind::room) == CheckCount{0, 1, 0});
    CHECK(count(CheckKind::feet) == CheckCount{0, 0, 1});
    CHECK(count(CheckKind::feet).open() == 0);
    CHECK(count(CheckKind::stated) == CheckCount{0, 1, 0});
}
