#include "model/buying/list_rows.h"

#include "engine/measure/text_scan.h"

#include <algorithm>
#include <array>
#include <optional>

namespace model {
namespace {

using engine::Error;
using engine::ErrorCode;

constexpr std::string_view utf8_mark = "\xEF\xBB\xBF";

Error list_error(std::size_t line, std::string message) {
    return {.code = ErrorCode::bad_file,
            .where = "line " + std::to_string(line),
            .message = std::move(message)};
}

std::string in_small_letters(std::string_view text) {
    std::string small{text};
    for (char& c : small) {
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    }
    return small;
}

bool ends_line(char c) { return c == '\n' || c == '\r'; }

// The first byte that is no text.
std::optional<Error> unreadable_byte(std::string_view text) {
    std::size_t line = 1;
    std::size_t line_begin = 0;
    for (std::size_t at = 0; at < text.size();) {
        const auto character = engine::decoded_character(text, at);
        const bool is_text = character.bytes > 1 || (text[at] > 0 && character.code < 0x80);
        if (!is_text) {
            const auto column = engine::column_of(text.substr(line_begin), at - line_begin);
            return Error{
                .code = ErrorCode::bad_file,
                .where = "line " + std::to_string(line) + ", character " + std::to_string(column),
                .message = "this is no text in UTF-8; save the list as CSV UTF-8"};
        }
        at += character.bytes;
        const bool is_crlf = text[at - 1] == '\r' && at < text.size() && text[at] == '\n';
        if (ends_line(text[at - 1]) && !is_crlf) {
            ++line;
            line_begin = at;
        }
    }
    return std::nullopt;
}

class RowReader {
public:
    RowReader(std::string_view text, char separator) : text_{text}, separator_{separator} {}

    bool is_at_end() const { return at_ >= text_.size(); }

    engine::Result<ListRow> row() {
        ListRow row{.line = line_, .fields = {}};
        if (text_[at_] == '#') {
            while (!is_at_end() && !ends_line(text_[at_])) ++at_;
            end_line();
            return row;
        }
        for (;;) {
            auto field = next_field();
            if (!field) return field.error();
            row.fields.emplace_back(trimmed(*field));
            if (is_at_end() || text_[at_] != separator_) break;
            ++at_;
        }
        if (!is_at_end() && !ends_line(text_[at_])) {
            return list_error(line_,
                              "something stands behind a closing quote; a quote inside a "
                              "quoted field is written twice");
        }
        end_line();
        return row;
    }

private:
    void end_line() {
        if (is_at_end()) return;
        at_ += text_.substr(at_, 2) == "\r\n" ? std::size_t{2} : std::size_t{1};
        ++line_;
    }

    engine::Result<std::string> next_field() {
        if (!is_at_end() && text_[at_] == '"') return quoted_field();
        const auto begin = at_;
        while (!is_at_end() && text_[at_] != separator_ && !ends_line(text_[at_])) ++at_;
        return std::string(text_.substr(begin, at_ - begin));
    }

    engine::Result<std::string> quoted_field() {
        const auto opened_on = line_;
        std::string field;
        ++at_;
        while (!is_at_end()) {
            const char c = text_[at_++];
            if (c == '"') {
                if (is_at_end() || text_[at_] != '"') return field;
                ++at_;
            } else if (c == '\n' || (c == '\r' && (is_at_end() || text_[at_] != '\n'))) {
                ++line_;
            }
            field += c;
        }
        return list_error(opened_on,
                          "a quote is opened here and never closed; close it, or take "
                          "it out");
    }

    std::string_view text_;
    char separator_;
    std::size_t at_ = 0;
    std::size_t line_ = 1;
};

bool has_all(const ListRow& row, const std::vector<std::string_view>& needed) {
    return std::ranges::all_of(needed, [&](std::string_view heading) {
        return std::ranges::any_of(row.fields, [&](const std::string& field) {
            return in_small_letters(field) == heading;
        });
    });
}

bool is_blank(const ListRow& row) {
    return std::ranges::all_of(row.fields, &std::string::empty) || row.fields.empty();
}

bool is_comment(const ListRow& row) { return !row.fields.empty() && row.fields[0][0] == '#'; }

std::optional<Error> misfit(const ListRow& row, std::size_t width) {
    for (auto i = width; i < row.fields.size(); ++i) {
        if (row.fields[i].empty()) continue;
        return list_error(row.line, std::to_string(row.fields.size()) +
                                        " fields, where there are " + std::to_string(width) +
                                        " headings; a field that holds the separator itself stands "
                                        "in quotes, and a price is written like 33.50");
    }
    return std::nullopt;
}

// None where the headings do not stand in this text with that separator.
std::optional<engine::Result<ListRows>> rows_parted_by(
    char separator, std::string_view text, const std::vector<std::string_view>& needed) {
    RowReader reader{text, separator};
    ListRows list{.separator = separator, .headings = {}, .rows = {}};
    while (!reader.is_at_end()) {
        auto row = reader.row();
        const bool has_headings = !list.headings.fields.empty();
        if (!row && has_headings) return row.error();
        if (!row) return std::nullopt;
        if (is_blank(*row) || is_comment(*row)) continue;
        if (!has_headings) {
            if (!has_all(*row, needed)) continue;
            list.headings = *row;
            for (auto& heading : list.headings.fields) heading = in_small_letters(heading);
            continue;
        }
        const auto width = list.headings.fields.size();
        if (const auto error = misfit(*row, width)) return *error;
        ListRow kept = *row;
        kept.fields.resize(width);
        list.rows.push_back(std::move(kept));
    }
    if (list.headings.fields.empty()) return std::nullopt;
    return list;
}

std::string as_headings(const std::vector<std::string_view>& needed) {
    std::string text;
    for (const auto heading : needed) text += (text.empty() ? "" : ", ") + std::string(heading);
    return text;
}

}  // namespace

std::string_view trimmed(std::string_view text) {
    std::size_t begin = text.size();
    std::size_t end = 0;
    for (std::size_t at = 0; at < text.size();) {
        const auto character = engine::decoded_character(text, at);
        if (!engine::is_space(character.code)) {
            begin = std::min(begin, at);
            end = at + character.bytes;
        }
        at += character.bytes;
    }
    return begin < end ? text.substr(begin, end - begin) : std::string_view{};
}

engine::Result<ListRows> read_list_rows(std::string_view text,
                                        const std::vector<std::string_view>& needed) {
    if (text.substr(0, 2) == "\xFF\xFE" || text.substr(0, 2) == "\xFE\xFF")
        return list_error(1, "this is text in UTF-16; save the list as CSV UTF-8");
    if (text.substr(0, utf8_mark.size()) == utf8_mark) text.remove_prefix(utf8_mark.size());
    if (const auto error = unreadable_byte(text)) return *error;
    for (const char separator : {',', ';', '\t'}) {
        if (auto list = rows_parted_by(separator, text, needed)) return std::move(*list);
    }
    return list_error(1, "there is no row of headings; it names at least " + as_headings(needed));
}

}  // namespace model
