#include "engine/files/csv.h"

#include <algorithm>
#include <optional>

namespace engine {
namespace {

constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

class CsvReader {
public:
    explicit CsvReader(std::string_view text) : text_{text} {
        if (text_.substr(0, byte_order_mark.size()) == byte_order_mark)
            at_ = byte_order_mark.size();
    }

    Result<CsvTable> table() {
        CsvTable table;
        if (is_at_end()) return *fail(1, "there is no header row");
        if (const auto error = take_row(table.header)) return *error;
        while (!is_at_end()) {
            const auto line = line_;
            CsvRow row;
            if (const auto error = take_row(row)) return *error;
            if (row.size() != table.header.size()) return *wrong_width(line, row, table.header);
            table.rows.push_back(std::move(row));
        }
        return table;
    }

private:
    bool is_at_end() const { return at_ >= text_.size(); }
    bool is_next(char c) const { return at_ < text_.size() && text_[at_] == c; }

    std::optional<Error> take_row(CsvRow& row) {
        for (;;) {
            if (const auto error = take_field(row.emplace_back())) return error;
            if (!is_next(',')) break;
            ++at_;
        }
        if (is_at_end()) return std::nullopt;
        if (const auto ending = line_end_length()) {
            at_ += ending;
            ++line_;
            return std::nullopt;
        }
        return fail(line_, "a comma or the end of the line is needed after a closing quote");
    }

    std::optional<Error> take_field(std::string& field) {
        if (is_next('"')) return take_quoted(field);
        const auto begin = at_;
        while (!is_at_end() && text_[at_] != ',' && line_end_length() == 0) ++at_;
        field = text_.substr(begin, at_ - begin);
        return std::nullopt;
    }

    std::optional<Error> take_quoted(std::string& field) {
        const auto opened_on = line_;
        ++at_;
        for (;;) {
            const auto quote = text_.find('"', at_);
            if (quote == std::string_view::npos)
                return fail(opened_on, "a quote is opened here and never closed");
            const auto part = text_.substr(at_, quote - at_);
            field += part;
            line_ += static_cast<std::size_t>(std::count(part.begin(), part.end(), '\n'));
            at_ = quote + 1;
            if (!is_next('"')) return std::nullopt;
            field += '"';
            ++at_;
        }
    }

    // 1 for LF, 2 for CRLF, 0 where no line ends here.
    std::size_t line_end_length() const {
        if (is_next('\n')) return 1;
        return text_.substr(at_, 2) == "\r\n" ? 2 : 0;
    }

    static std::optional<Error> fail(std::size_t line, std::string message) {
        return Error{ErrorCode::bad_file, "line " + std::to_string(line), std::move(message)};
    }

    static std::optional<Error> wrong_width(std::size_t line,
                                            const CsvRow& row,
                                            const CsvRow& header) {
        return fail(line, std::to_string(row.size()) + " fields, where the header has " +
                              std::to_string(header.size()));
    }

    std::string_view text_;
    std::size_t at_ = 0;
    std::size_t line_ = 1;
};

}  // namespace

Result<CsvTable> read_csv(std::string_view text) { return CsvReader{text}.table(); }

}  // namespace engine
