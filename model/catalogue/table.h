// One table of the catalogue, read by the names of its columns; errors name the file and the line.
#pragma once

#include "engine/files/csv.h"
#include "engine/measure/length.h"
#include "engine/result.h"
#include "model/catalogue/catalogue.h"

#include <cstddef>
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace model {

struct Table {
    std::string file;  // "catalogue/drills.csv", as errors show it
    engine::CsvTable csv;
    std::vector<std::size_t> lines;  // of each row, from 1
};

// Reads assets/catalogue/`name`.csv. Error: bad_file naming the file, and the line where there is
// one.
engine::Result<Table> read_table(const std::filesystem::path& assets, std::string_view name);

// Reads one row field by field. The first fault is kept, later reads give empty values: a reader
// asks once, at the end.
class Row {
public:
    Row(const Table& table, std::size_t index) : table_{table}, index_{index} {}

    std::string text(std::string_view column);
    std::string text_or_empty(std::string_view column);
    double number(std::string_view column);
    double number_or_zero(std::string_view column);
    MeasureSystem system();
    // Bare numbers are inches or millimetres; not negative.
    engine::Length length(std::string_view column, MeasureSystem bare);
    engine::Length length_or_zero(std::string_view column, MeasureSystem bare);
    // Parted by semicolons, rising.
    std::vector<engine::Length> lengths(std::string_view column, MeasureSystem bare);

    void fail(std::string_view column, std::string message);
    const std::optional<engine::Error>& error() const { return error_; }

private:
    const Table& table_;
    std::size_t index_;
    std::optional<engine::Error> error_;
};

// Every row as a value, or the first row's error.
template <class T, class Read>
engine::Result<std::vector<T>> rows_as(const Table& table, Read read) {
    std::vector<T> values;
    values.reserve(table.csv.rows.size());
    for (std::size_t i = 0; i < table.csv.rows.size(); ++i) {
        Row row{table, i};
        T value = read(row);
        if (row.error()) return *row.error();
        values.push_back(std::move(value));
    }
    return values;
}

}  // namespace model
