#include "tests/reference/reference_table.h"

#include "engine/files/csv.h"
#include "engine/files/whole_file.h"

#include <catch2/catch.hpp>

#include <charconv>
#include <filesystem>
#include <set>

std::string ReferenceRow::text(const std::string& column) const {
    const auto found = fields_.find(column);
    if (found == fields_.end()) FAIL(name_ << " has no column " << column);
    return found->second;
}

double ReferenceRow::number(const std::string& column) const {
    const auto field = text(column);
    double value = 0.0;
    const auto* const end = field.data() + field.size();
    const auto [stopped, fault] = std::from_chars(field.data(), end, value);
    if (fault != std::errc{} || stopped != end) {
        FAIL(name_ << ", " << column << ": '" << field << "' is no number");
    }
    return value;
}

std::vector<ReferenceRow> reference_rows(const std::string& file) {
    const auto path = std::filesystem::path{BARWRIGHT_TESTS} / "reference" / file;
    const auto bytes = engine::read_whole_file(path);
    if (!bytes) FAIL(to_text(bytes.error()));
    const auto table = engine::read_csv(*bytes);
    if (!table) FAIL(file << " " << to_text(table.error()));
    const std::set<std::string> ways = {"read", "from memory", "computed"};
    std::vector<ReferenceRow> rows;
    for (std::size_t i = 0; i < table->rows.size(); ++i) {
        std::map<std::string, std::string> fields;
        for (std::size_t j = 0; j < table->header.size(); ++j) {
            fields[table->header[j]] = table->rows[i][j];
        }
        rows.emplace_back(file + " line " + std::to_string(i + 2), std::move(fields));
        if (rows.back().text("source").empty() || ways.count(rows.back().text("seen")) == 0) {
            FAIL(rows.back().name() << " does not say where it comes from");
        }
    }
    if (rows.empty()) FAIL(file << " has no rows");
    return rows;
}
