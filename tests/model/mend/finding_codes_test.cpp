// That no code of a finding is forgotten: they are gathered from the source of the model itself.
#include "engine/files/whole_file.h"
#include "model/mend/finding_rules.h"
#include "model/mend/mend.h"
#include "model/mend/mend_rows.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <filesystem>
#include <regex>
#include <set>
#include <string>
#include <vector>

using namespace model;

namespace {

namespace fs = std::filesystem;

// Words with a line below, of the model, that are no codes: names of numbers, of columns and of
// groups.
const std::set<std::string> no_codes{"between_nodes", "datum_side", "diagonal_mm", "moved_in",
                                     "per_cent"};

std::string source_text(const fs::path& file) {
    const auto text = engine::read_whole_file(file, 1U << 22U);
    REQUIRE(text);
    return *text;
}

void gather(const std::string& text, const std::regex& what, std::set<std::string>& words) {
    for (std::sregex_iterator it(text.begin(), text.end(), what), end; it != end; ++it) {
        words.insert((*it)[1].str());
    }
}

// What is written as a code, and every word of the shape that codes of two words have.
std::set<std::string> codes_in_source() {
    const std::regex as_code("code\\s*=\\s*\"([a-z_]+)\"");
    const std::regex by_shape("\"([a-z]+(?:_[a-z]+)+)\"");
    const fs::path model = fs::path(BARWRIGHT_ASSETS).parent_path() / "model";
    std::set<std::string> codes;
    std::vector<fs::path> files{model / "schedule/findings.cpp"};
    for (const char* folder : {"resolve", "room", "assembly"}) {
        for (const auto& entry : fs::directory_iterator(model / folder)) {
            const auto extension = entry.path().extension();
            if (extension == ".cpp" || extension == ".h") files.push_back(entry.path());
        }
    }
    for (const auto& file : files) {
        const auto text = source_text(file);
        gather(text, as_code, codes);
        gather(text, by_shape, codes);
    }
    for (const auto& word : no_codes) codes.erase(word);
    return codes;
}

std::set<std::string> as_set(const std::vector<std::string_view>& words) {
    return {words.begin(), words.end()};
}

}  // namespace

TEST_CASE("every code of a finding has its rule with a source", "[model][mend]") {
    const auto codes = codes_in_source();
    REQUIRE(codes.size() > 90);
    CHECK(codes == as_set(codes_with_rules()));
    for (const auto& code : codes) {
        CAPTURE(code);
        const auto* rule = finding_rule(code);
        REQUIRE(rule != nullptr);
        CHECK_FALSE(rule->rule.empty());
        CHECK_FALSE(rule->source.empty());
        CHECK(rule->rule.back() != '.');
    }
}

TEST_CASE("every code of a finding has ways to mend it or a reason why there is none",
          "[model][mend]") {
    CHECK(codes_in_source() == as_set(codes_with_mends()));
    for (const auto& row : mend_rows()) {
        CAPTURE(row.code);
        CHECK((row.ways != nullptr) != !row.why_none.empty());
    }
}

TEST_CASE("the rows of mends and of rules name each code once", "[model][mend]") {
    const auto check = [](const std::vector<std::string_view>& codes) {
        CHECK(std::ranges::is_sorted(codes));
        CHECK(std::ranges::adjacent_find(codes) == codes.end());
    };
    check(codes_with_mends());
    check(codes_with_rules());
}

TEST_CASE("of a code that nobody knows there is neither rule nor mend", "[model][mend]") {
    CHECK(finding_rule("no_such_code") == nullptr);
    CHECK(why_no_way("no_such_code").empty());
}
