#include "model/catalogue/table.h"

#include "engine/files/whole_file.h"
#include "engine/measure/tape.h"

#include <algorithm>
#include <charconv>
#include <cmath>

namespace model {
namespace {

engine::Error bad_file(std::string where, std::string message) {
    return {engine::ErrorCode::bad_file, std::move(where), std::move(message)};
}

std::string place(const std::string& file, std::size_t line) {
    return file + " line " + std::to_string(line);
}

std::size_t line_breaks(const engine::CsvRow& row) {
    std::size_t count = 0;
    for (const auto& field : row) {
        count += static_cast<std::size_t>(std::count(field.begin(), field.end(), '\n'));
    }
    return count;
}

// A quoted field may hold line breaks, so a row's line is not its index plus two.
std::vector<std::size_t> lines_of_rows(const engine::CsvTable& csv) {
    std::vector<std::size_t> lines;
    std::size_t line = 2 + line_breaks(csv.header);
    for (const auto& row : csv.rows) {
        lines.push_back(line);
        line += 1 + line_breaks(row);
    }
    return lines;
}

engine::LengthUnit unit_of(MeasureSystem system) {
    return system == MeasureSystem::inch ? engine::LengthUnit::inch
                                         : engine::LengthUnit::millimetre;
}

std::string_view trimmed(std::string_view text) {
    const auto first = text.find_first_not_of(" \t");
    if (first == std::string_view::npos) return {};
    return text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

}  // namespace

engine::Result<Table> read_table(const std::filesystem::path& assets, std::string_view name) {
    const std::string file = "catalogue/" + std::string{name} + ".csv";
    const auto bytes = engine::read_whole_file(assets / "catalogue" / (std::string{name} + ".csv"));
    if (!bytes) return bad_file(file, bytes.error().message);
    auto csv = engine::read_csv(*bytes);
    if (!csv) return bad_file(file + " " + csv.error().where, csv.error().message);
    Table table{.file = file, .csv = std::move(csv).value(), .lines = {}};
    table.lines = lines_of_rows(table.csv);
    return table;
}

std::string Row::text_or_empty(std::string_view column) {
    const auto& header = table_.csv.header;
    const auto found = std::find(header.begin(), header.end(), column);
    if (found == header.end()) {
        fail(column, "the table has no such column");
        return {};
    }
    const auto& field = table_.csv.rows[index_][static_cast<std::size_t>(found - header.begin())];
    return std::string{trimmed(field)};
}

std::string Row::text(std::string_view column) {
    auto field = text_or_empty(column);
    if (field.empty()) fail(column, "nothing is written here");
    return field;
}

double Row::number(std::string_view column) {
    const auto field = text(column);
    double value = 0.0;
    const auto* const end = field.data() + field.size();
    const auto [stopped, fault] = std::from_chars(field.data(), end, value);
    if (fault != std::errc{} || stopped != end || !std::isfinite(value) || value < 0.0) {
        fail(column, "'" + field + "' is not a number from zero up");
        return 0.0;
    }
    return value;
}

double Row::number_or_zero(std::string_view column) {
    return text_or_empty(column).empty() ? 0.0 : number(column);
}

MeasureSystem Row::system() {
    const auto field = text("system");
    if (field == "metric") return MeasureSystem::metric;
    if (field != "inch") fail("system", "'" + field + "' is neither inch nor metric");
    return MeasureSystem::inch;
}

engine::Length Row::length(std::string_view column, MeasureSystem bare) {
    const auto field = text(column);
    const auto length = engine::read_length(field, unit_of(bare));
    if (!length) {
        fail(column, "'" + field + "' is not a length: " + length.error().message);
        return {};
    }
    if (*length < engine::Length{}) fail(column, "'" + field + "' is less than zero");
    return *length;
}

engine::Length Row::length_or_zero(std::string_view column, MeasureSystem bare) {
    return text_or_empty(column).empty() ? engine::Length{} : length(column, bare);
}

std::vector<engine::Length> Row::lengths(std::string_view column, MeasureSystem bare) {
    const auto field = text(column);
    std::vector<engine::Length> lengths;
    for (std::size_t at = 0; at < field.size();) {
        const auto end = std::min(field.find(';', at), field.size());
        const auto length = engine::read_length(
            trimmed(std::string_view{field}.substr(at, end - at)), unit_of(bare));
        if (!length) {
            fail(column, "'" + field + "' is not a list of lengths parted by semicolons");
            return {};
        }
        lengths.push_back(*length);
        at = end + 1;
    }
    if (!std::is_sorted(lengths.begin(), lengths.end())) {
        fail(column, "'" + field + "' does not rise; write the shortest first");
    }
    return lengths;
}

void Row::fail(std::string_view column, std::string message) {
    if (error_) return;
    error_ = bad_file(place(table_.file, table_.lines[index_]) + ", column " + std::string{column},
                      std::move(message));
}

}  // namespace model
