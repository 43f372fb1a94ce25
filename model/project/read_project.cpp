#include "engine/files/json_text.h"
#include "model/project/project_fields.h"
#include "model/project/project_json.h"
#include "model/project/type_traits.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <limits>
#include <type_traits>
#include <utility>

namespace model {

namespace {

using engine::Error;
using engine::ErrorCode;
using engine::json_quoted;
using nlohmann::json;

// A value as a message may show it.
std::string found_text(const json& value) {
    if (value.is_object()) return "an object";
    if (value.is_array()) return "a list of " + std::to_string(value.size());
    if (!value.is_string()) return value.dump();
    return json_quoted(engine::in_short(value.get_ref<const std::string&>()));
}

std::string with_article(std::string_view thing) {
    const bool starts_with_vowel = std::string_view{"aeio"}.find(thing.front()) != thing.npos;
    return (starts_with_vowel ? "an " : "a ") + std::string(thing);
}

template <class Words>
std::string listed(const Words& words, std::string_view last = " or ") {
    std::string text;
    for (const auto& word : words) {
        if (!text.empty()) text += &word == &words.back() ? last : ", ";
        text += json_quoted(word);
    }
    return text;
}

// Where reading stands, and the first fault. After a fault nothing more is read.
class Reader {
public:
    template <class T>
    void value(const json& in, const Meaning& meaning, T& out);

    template <Thing T>
    void thing(const json& in, T& out);

    void fail(std::string message) {
        if (!error_) error_ = Error{ErrorCode::bad_file, where(), std::move(message)};
    }
    bool has_failed() const { return error_.has_value(); }
    const Error& error() const { return *error_; }

    void step_in(std::string step) { path_.push_back(std::move(step)); }
    void step_out() { path_.pop_back(); }

private:
    std::string where() const {
        std::string pointer;
        for (const std::string& step : path_) pointer += step;
        return pointer;
    }

    void expected(std::string_view what, const json& found) {
        fail("expected " + std::string(what) + ", found " + found_text(found));
    }

    void text(const json& in, const Meaning& meaning, std::string& out);
    void whole_number(const json& in, const Meaning& meaning, int& out);
    void number(const json& in, const Meaning& meaning, double& out);

    template <class E>
    void word(const json& in, E& out);
    template <class Row>
    void row(const json& in, const Meaning& meaning, Row& out);
    template <class List>
    void list(const json& in, const Meaning& meaning, List& out);

    std::vector<std::string> path_;
    std::optional<Error> error_;
};

// The keys that a thing may have.
struct KeyList {
    std::vector<std::string_view> keys;

    template <class Member>
    void operator()(const Field& field, Member) {
        keys.push_back(field.key);
    }
    template <class Alternatives, class Member>
    void one_of(const Alternatives& alternatives, Member) {
        for (const Field& field : alternatives) keys.push_back(field.key);
    }
};

template <Thing T>
std::vector<std::string_view> keys_of() {
    KeyList list;
    visit_fields(list, Of<T>{});
    if constexpr (std::is_same_v<T, Project>) list.keys.insert(list.keys.begin(), "barwright");
    return std::move(list.keys);
}

// Reads the fields of one thing that stand in an object.
template <Thing T>
class ThingReader {
public:
    ThingReader(Reader& reader, const json& in, T& out) : reader_{reader}, in_{in}, out_{out} {}

    template <class M>
    void operator()(const Field& field, M T::*member) {
        if (reader_.has_failed()) return;
        if (const auto found = in_.find(field.key); found != in_.end()) {
            read(*found, field, out_.*member);
        } else if (field.is_needed) {
            reader_.fail(with_article(thing_name<T>) + " needs the field " +
                         json_quoted(field.key));
        }
    }

    template <std::size_t n, class Variant>
    void one_of(const std::array<Field, n>& alternatives, Variant T::*member) {
        if (reader_.has_failed()) return;
        static_assert(n == std::variant_size_v<Variant>);
        std::vector<std::string_view> keys;
        std::vector<std::string_view> present;
        for (const Field& field : alternatives) {
            keys.push_back(field.key);
            if (in_.contains(field.key)) present.push_back(field.key);
        }
        if (present.size() != 1) {
            reader_.fail(with_article(thing_name<T>) + " needs one of " + listed(keys) +
                         (present.empty() ? "" : " and has more"));
            return;
        }
        read_alternative(alternatives, out_.*member, std::make_index_sequence<n>{});
    }

private:
    template <class M>
    void read(const json& value, const Field& field, M& out) {
        reader_.step_in(engine::json_pointer_step(field.key));
        reader_.value(value, field.meaning, out);
        reader_.step_out();
    }

    template <std::size_t n, class Variant, std::size_t... i>
    void read_alternative(const std::array<Field, n>& alternatives,
                          Variant& out,
                          std::index_sequence<i...>) {
        const auto read_if_present = [&](const Field& field, auto emplace) {
            if (const auto found = in_.find(field.key); found != in_.end()) {
                read(*found, field, emplace());
            }
        };
        (read_if_present(
             alternatives[i], [&]() -> auto& { return out.template emplace<i>(); }),
         ...);
    }

    Reader& reader_;
    const json& in_;
    T& out_;
};

template <class T>
void Reader::value(const json& in, const Meaning& meaning, T& out) {
    if constexpr (std::is_same_v<T, std::string>) {
        text(in, meaning, out);
    } else if constexpr (std::is_same_v<T, bool>) {
        in.is_boolean() ? void(out = in.get<bool>()) : expected("true or false", in);
    } else if constexpr (std::is_same_v<T, int>) {
        whole_number(in, meaning, out);
    } else if constexpr (std::is_same_v<T, double>) {
        number(in, meaning, out);
    } else if constexpr (std::is_enum_v<T>) {
        word(in, out);
    } else if constexpr (is_optional<T>) {
        value(in, meaning, out.emplace());
    } else if constexpr (is_row<T>) {
        row(in, meaning, out);
    } else if constexpr (is_list<T>) {
        list(in, meaning, out);
    } else {
        thing(in, out);
    }
}

void Reader::text(const json& in, const Meaning& meaning, std::string& out) {
    if (in.is_string()) {
        out = in.get_ref<const std::string&>();
    } else if (meaning.role != Role::formula) {
        expected(meaning.role == Role::text ? "a text" : "a name", in);
    } else if (in.is_number()) {
        fail("expected a formula as text, found the number " + in.dump() + ": write \"" +
             in.dump() + "\"");
    } else {
        expected("a formula as text", in);
    }
}

std::string between_text(const Meaning& meaning) {
    if (meaning.least == plain.least) return "";
    if (meaning.is_power_of_two) return " 1, 2, 4 .. " + json(meaning.most).dump();
    return " between " + json(meaning.least).dump() + " and " + json(meaning.most).dump();
}

bool is_power_of_two(int n) { return n > 0 && (n & (n - 1)) == 0; }

void Reader::whole_number(const json& in, const Meaning& meaning, int& out) {
    const double found = in.is_number() ? in.get<double>() : 0.5;
    const double least = std::max(meaning.least, double{std::numeric_limits<int>::min()});
    const double most = std::min(meaning.most, double{std::numeric_limits<int>::max()});
    if (std::trunc(found) != found || found < least || found > most ||
        (meaning.is_power_of_two && !is_power_of_two(in.get<int>()))) {
        expected("a whole number" + between_text(meaning), in);
        return;
    }
    out = in.get<int>();
}

void Reader::number(const json& in, const Meaning& meaning, double& out) {
    const double found = in.is_number() ? in.get<double>() : 0.0;
    if (!in.is_number() || found < meaning.least || found > meaning.most) {
        expected("a number" + between_text(meaning), in);
        return;
    }
    out = found;
}

template <class E>
void Reader::word(const json& in, E& out) {
    constexpr auto& words = words_for<E>;
    const auto found = in.is_string()
                           ? std::find(words.begin(), words.end(), in.get_ref<const std::string&>())
                           : words.end();
    if (found == words.end()) {
        expected(listed(words), in);
        return;
    }
    out = static_cast<E>(found - words.begin());
}

template <class Row>
void Reader::row(const json& in, const Meaning& meaning, Row& out) {
    if (!in.is_array() || in.size() != out.size()) {
        expected("a list of " + std::to_string(out.size()), in);
        return;
    }
    for (std::size_t i = 0; i < out.size() && !has_failed(); ++i) {
        step_in("/" + std::to_string(i));
        value(in[i], meaning, out[i]);
        step_out();
    }
}

template <class List>
void Reader::list(const json& in, const Meaning& meaning, List& out) {
    if (!in.is_array()) {
        expected("a list", in);
        return;
    }
    out.reserve(in.size());
    for (std::size_t i = 0; i < in.size() && !has_failed(); ++i) {
        step_in("/" + std::to_string(i));
        value(in[i], meaning, out.emplace_back());
        step_out();
    }
}

template <Thing T>
void Reader::thing(const json& in, T& out) {
    const std::string name = with_article(thing_name<T>);
    if (!in.is_object()) {
        expected("an object (" + name + ")", in);
        return;
    }
    const std::vector<std::string_view> keys = keys_of<T>();
    for (const auto& [key, unused] : in.items()) {
        if (std::find(keys.begin(), keys.end(), key) != keys.end()) continue;
        step_in(engine::json_pointer_step(engine::in_short(key)));
        fail(name + " has no field " + json_quoted(engine::in_short(key)) + "; its fields are " +
             listed(keys, " and "));
        step_out();
        return;
    }
    ThingReader<T> fields{*this, in, out};
    visit_fields(fields, Of<T>{});
}

engine::Result<engine::Done> checked_format(const json& in) {
    const auto fault = [](std::string where, std::string message) {
        return Error{ErrorCode::bad_file, std::move(where), std::move(message)};
    };
    if (!in.is_object()) return fault("", "expected a Barwright project, found " + found_text(in));
    const auto found = in.find("barwright");
    if (found == in.end()) {
        return fault("", "not a Barwright project: it lacks the field \"barwright\"");
    }
    const double format = found->is_number() ? found->get<double>() : 0.0;
    if (std::trunc(format) != format || format < 1) {
        return fault("/barwright", "expected the format's version, a whole number from 1, found " +
                                       found_text(*found));
    }
    if (format > project_format) {
        return Error{ErrorCode::newer_version, "/barwright",
                     "the file has format " + found->dump() +
                         " of a later Barwright; this one reads up to format " +
                         std::to_string(project_format)};
    }
    return engine::Done{};
}

// Of a photograph it helps nobody what its first byte is not.
engine::Error not_read(std::string_view text, engine::Error error) {
    constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
    if (text.starts_with(byte_order_mark)) text.remove_prefix(byte_order_mark.size());
    const auto begins = text.find_first_not_of(" \t\r\n");
    if (begins != std::string_view::npos && text[begins] == '{') return error;
    if (error.message.rfind("not JSON", 0) != 0) return error;  // too large, too deep
    error.message = begins == std::string_view::npos
                        ? "not JSON: there is nothing in it"
                        : "not JSON, so this is no project; projects end in .json";
    return error;
}

}  // namespace

engine::Result<Project> read_project_json(std::string_view text) {
    const auto tree = engine::read_json(text);
    if (!tree) return not_read(text, tree.error());
    if (const auto format = checked_format(*tree); !format) return format.error();
    Reader reader;
    Project project;
    reader.thing(*tree, project);
    if (reader.has_failed()) return reader.error();
    return project;
}

}  // namespace model
