// The fields of one row of a price list after another, with what is wrong in them.
#pragma once

#include "model/buying/list_rows.h"
#include "model/buying/price_list.h"

#include <map>
#include <optional>
#include <string>
#include <string_view>

namespace model {

class ListFields {
public:
    // Warnings go into the list.
    ListFields(std::string_view file, PriceList& list, engine::LengthUnit bare)
        : file_{file}, list_{list}, bare_{bare} {}

    void begin(const ListRows& rows);
    void go_to(const ListRow& row) { row_ = &row; }

    // Empty where the list has no such column.
    std::string_view text(std::string_view column) const;
    std::size_t line() const { return row_->line; }
    char separator() const { return separator_; }
    engine::LengthUnit bare() const { return bare_; }

    // What cannot be read fails.
    engine::Length length();       // in the column size
    Cents money();                 // in the column price, as the two that follow
    std::optional<Cents> price();  // none where nothing stands there
    std::optional<int> limit();

    void warn(std::size_t line, std::string message);
    void fail(std::string_view column, std::string message);  // the first fault is kept
    const std::optional<engine::Error>& error() const { return error_; }

    // Fails where the same stood on another row.
    void is_only_one(const std::string& key, std::string_view column);
    std::size_t line_of(const std::string& key) const;  // 0: none

private:
    void check_sign(const std::string& sign);
    std::string place(std::size_t line) const;

    std::string file_;
    PriceList& list_;
    engine::LengthUnit bare_;
    char separator_ = ',';
    std::map<std::string, std::size_t, std::less<>> columns_;
    std::map<std::string, std::size_t> lines_;  // on which each thing stands
    const ListRow* row_ = nullptr;
    std::optional<engine::Error> error_;
};

}  // namespace model
