// The tables of this folder: published values, each with its source and whether it was read, comes
// from memory or was computed apart.
#pragma once

#include <map>
#include <string>
#include <vector>

// A row by column name; a column that is not there fails the test.
class ReferenceRow {
public:
    ReferenceRow(std::string name, std::map<std::string, std::string> fields)
        : name_{std::move(name)}, fields_{std::move(fields)} {}

    const std::string& name() const { return name_; }  // "threads.csv line 7"
    std::string text(const std::string& column) const;
    double number(const std::string& column) const;

private:
    std::string name_;
    std::map<std::string, std::string> fields_;
};

// Every row of tests/reference/`file`; none fails the test, as does a row without a source.
std::vector<ReferenceRow> reference_rows(const std::string& file);
