#include "engine/files/json_text.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cstdint>
#include <optional>
#include <vector>

namespace engine {

namespace {

using Json = nlohmann::json;

bool starts_code_point(char byte) { return (static_cast<unsigned char>(byte) & 0xC0U) != 0x80U; }

std::string line_and_column(std::string_view text, std::size_t at) {
    const std::string_view before = text.substr(0, at);
    const auto line = 1 + std::count(before.begin(), before.end(), '\n');
    const std::size_t line_start = before.rfind('\n') + 1;  // npos + 1 is 0
    const std::string_view in_line = before.substr(line_start);
    const auto column = 1 + std::count_if(in_line.begin(), in_line.end(), starts_code_point);
    return "line " + std::to_string(line) + ", column " + std::to_string(column);
}

// The library's reason without its own code, its place and the text that it had read last, which
// may be long and may be binary.
std::string reason_in(std::string_view what) {
    constexpr std::string_view lead = "syntax error ";
    if (const auto at = what.find(lead); at != what.npos) what.remove_prefix(at + lead.size());
    std::string reason{what.substr(0, what.find("; last read: "))};
    if (const auto at = what.rfind("; expected "); at != what.npos && at >= reason.size()) {
        reason += what.substr(at);
    }
    return reason;
}

// Receives what the parser finds, builds the tree and stops at the first fault.
class TreeBuilder {
public:
    TreeBuilder(std::string_view text, const JsonLimits& limits) : text_{text}, limits_{limits} {}

    bool null() { return put(nullptr); }
    bool boolean(bool value) { return put(value); }
    bool number_integer(std::int64_t value) { return put(value); }
    bool number_unsigned(std::uint64_t value) { return put(value); }
    bool number_float(double value, const std::string&) { return put(value); }
    bool string(std::string& value) { return put(std::move(value)); }
    bool binary(Json::binary_t&) { return false; }  // never found in text

    bool start_object(std::size_t) { return open(Json::object()); }
    bool end_object() { return close(); }
    bool start_array(std::size_t) { return open(Json::array()); }
    bool end_array() { return close(); }

    bool key(std::string& key) {
        Json& object = *open_.back().node;
        open_.back().key = key;
        if (!object.contains(key)) return true;
        return fail(pointer(),
                    json_quoted(in_short(key)) + " is given twice here; keep one of the two");
    }

    bool parse_error(std::size_t bytes_read, const std::string&, const Json::exception& fault) {
        const std::size_t at = std::min(std::max<std::size_t>(bytes_read, 1) - 1, text_.size());
        constexpr int number_overflow = 406;
        const std::string reason = fault.id == number_overflow
                                       ? "a number is too large"
                                       : "not JSON: " + reason_in(fault.what());
        return fail(line_and_column(text_, at), reason);
    }

    Result<Json> result() && {
        if (error_) return *error_;
        return std::move(root_);
    }

private:
    struct Open {
        Json* node;
        std::string key;  // of an object: the one that is being read
    };

    std::string pointer() const {
        std::string text;
        for (const Open& open : open_) {
            // All but the innermost list already hold the element that is being read.
            const std::size_t index = open.node->size() - (&open == &open_.back() ? 0U : 1U);
            text += open.node->is_object() ? json_pointer_step(in_short(open.key))
                                           : "/" + std::to_string(index);
        }
        return text;
    }

    bool fail(std::string where, std::string message) {
        error_ = Error{ErrorCode::bad_file, std::move(where), std::move(message)};
        return false;
    }

    Json* add(Json value) {
        if (open_.empty()) return &(root_ = std::move(value));
        Json& parent = *open_.back().node;
        if (parent.is_object()) return &(parent[open_.back().key] = std::move(value));
        parent.push_back(std::move(value));
        return &parent.back();
    }

    bool is_counted() {
        if (++values_ <= limits_.most_values) return true;
        return fail(pointer(), "more than " + std::to_string(limits_.most_values) + " values");
    }

    bool put(Json value) {
        if (!is_counted()) return false;
        add(std::move(value));
        return true;
    }

    bool open(Json container) {
        if (open_.size() >= limits_.deepest) {
            return fail(pointer().substr(0, 200), "more than " + std::to_string(limits_.deepest) +
                                                      " lists and objects inside one another");
        }
        if (!is_counted()) return false;
        open_.push_back({add(std::move(container)), {}});
        return true;
    }

    bool close() {
        open_.pop_back();
        return true;
    }

    std::string_view text_;
    JsonLimits limits_;
    Json root_;
    std::vector<Open> open_;
    std::size_t values_ = 0;
    std::optional<Error> error_;
};

}  // namespace

Result<Json> read_json(std::string_view text, const JsonLimits& limits) {
    if (text.size() > limits.most_bytes) {
        return Error{
            ErrorCode::bad_file, "",
            "the text is larger than " + std::to_string(limits.most_bytes >> 20U) + " MiB"};
    }
    TreeBuilder builder{text, limits};
    Json::sax_parse(text.begin(), text.end(), &builder);
    return std::move(builder).result();
}

std::string json_quoted(std::string_view text) {
    return Json(text).dump(-1, ' ', false, Json::error_handler_t::replace);
}

bool is_utf8(std::string_view text) {
    const auto is_ascii = [](char c) { return static_cast<unsigned char>(c) < 0x80U; };
    if (std::all_of(text.begin(), text.end(), is_ascii)) return true;
    try {
        static_cast<void>(Json(text).dump());  // strict: throws at the first byte that is not
        return true;
    } catch (const Json::type_error&) {
        return false;
    }
}

std::string in_short(std::string_view text, std::size_t longest) {
    if (text.size() <= longest) return std::string(text);
    std::size_t end = longest;
    while (end > 0 && !starts_code_point(text[end])) --end;
    return std::string(text.substr(0, end)) + "...";
}

std::string json_pointer_step(std::string_view key) {
    std::string step = "/";
    for (const char c : key) {
        if (c == '~') {
            step += "~0";
        } else if (c == '/') {
            step += "~1";
        } else {
            step += c;
        }
    }
    return step;
}

}  // namespace engine
